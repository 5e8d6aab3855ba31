// The line between this page and its task: sticks in, pictures out. What was not acknowledged is sent again.
const root = document.getElementById("live");
const picture = document.getElementById("picture");
const page = crypto.getRandomValues(new BigUint64Array(1))[0];
const HEAD = 48;
const MOST_UNSENT = 4000;
const byPage = root.dataset.byPage === "yes";
const messages = new Map(); // sequence -> bytes not yet acknowledged
const slots = new Map(); // index of the browser -> {axes, buttons, first, rows}
let sequence = 0;
let lost = false;
let line = null;
let shownBefore = "";
let broken = false;

function head(kind, slot, { flags = 0, first = 0, rows = 0, axes = 0, buttons = 0, text = 0 } = {}, extra = 0) {
  const bytes = new ArrayBuffer(HEAD + extra);
  const view = new DataView(bytes);
  for (const [place, letter] of [..."swcb"].entries()) view.setUint8(place, letter.charCodeAt(0));
  view.setUint8(4, 1);
  view.setUint8(5, kind);
  view.setUint8(6, slot);
  view.setUint8(7, flags | (lost ? 1 : 0));
  view.setUint32(8, sequence, true);
  view.setUint32(12, first, true);
  view.setUint16(16, rows, true);
  view.setUint8(18, axes);
  view.setUint8(19, buttons);
  view.setUint32(20, text, true);
  view.setBigUint64(24, page, true);
  view.setFloat64(32, performance.now(), true);
  view.setFloat64(40, Date.now(), true);
  lost = false;
  return [bytes, view];
}

function send(bytes) {
  messages.set(sequence, bytes);
  sequence += 1;
  if (messages.size > MOST_UNSENT) {
    messages.delete(messages.keys().next().value);
    lost = true;
  }
  if (line && line.readyState === WebSocket.OPEN) line.send(bytes);
}

function appeared(pad) {
  const name = new TextEncoder().encode(pad.id).slice(0, 256);
  const axes = Math.min(pad.axes.length, 16);
  const buttons = Math.min(pad.buttons.length, 52);
  slots.set(pad.index, { axes, buttons, first: 0, rows: [], at: -1 });
  const [bytes, view] = head(2, pad.index, { flags: pad.mapping === "standard" ? 2 : 0, axes, buttons, text: name.length }, name.length);
  new Uint8Array(bytes, HEAD).set(name);
  send(bytes, view);
}

function look() {
  const seen = new Set();
  for (const pad of navigator.getGamepads()) {
    if (!pad || !pad.connected || pad.index > 15) continue;
    seen.add(pad.index);
    if (!slots.has(pad.index)) appeared(pad);
    const slot = slots.get(pad.index);
    const row = [performance.now(), 0];
    for (let place = 0; place < slot.buttons; place += 1) if (pad.buttons[place].pressed) row[1] += 2 ** place;
    for (let place = 0; place < slot.axes; place += 1) row.push(pad.axes[place]);
    slot.rows.push(row);
  }
  for (const index of [...slots.keys()]) {
    if (seen.has(index)) continue;
    flush(index);
    slots.delete(index);
    send(head(3, index)[0]);
  }
}

function flush(index) {
  const slot = slots.get(index);
  while (slot.rows.length) {
    const rows = slot.rows.splice(0, 1000);
    const wide = 2 + slot.axes;
    const [bytes, view] = head(1, index, { first: slot.first, rows: rows.length, axes: slot.axes, buttons: slot.buttons }, rows.length * wide * 8);
    rows.forEach((row, at) => row.forEach((value, place) => view.setFloat64(HEAD + (at * wide + place) * 8, value, true)));
    slot.first += rows.length;
    send(bytes);
  }
}

let quiet = 0;
function flushAll() {
  for (const index of slots.keys()) flush(index);
  quiet += 1;
  if (!slots.size && quiet % 30 === 0) send(head(4, 0)[0]);
}

let looking = false;
function beginLooking() {
  if (!byPage || looking) return; // not before the line is open: the first message ties this page's clock to the app's
  looking = true;
  setInterval(look, 4); // as often as browsers allow a timer
  setInterval(flushAll, 33);
}

function connect() {
  line = new WebSocket(`${location.protocol === "https:" ? "wss" : "ws"}://${location.host}${root.dataset.socket}`);
  line.binaryType = "arraybuffer";
  line.addEventListener("open", () => {
    if (broken) note(root.dataset.back);
    broken = false;
    say({ do: "motion", reduced: matchMedia("(prefers-reduced-motion: reduce)").matches });
    for (const bytes of messages.values()) line.send(bytes);
    beginLooking();
  });
  line.addEventListener("message", (event) => answer(JSON.parse(event.data)));
  line.addEventListener("close", (event) => {
    if (event.code === 4404) {
      note(root.dataset.closed);
      document.querySelectorAll("[data-do]").forEach((button) => { button.disabled = true; });
      return;
    }
    if (!broken) note(root.dataset.broken);
    broken = true;
    setTimeout(connect, 700);
  });
}

function say(command) {
  if (line && line.readyState === WebSocket.OPEN) line.send(JSON.stringify(command));
}

function note(words) {
  const item = document.createElement("li");
  item.textContent = words;
  const list = document.getElementById("notes");
  list.prepend(item);
  while (list.children.length > 6) list.lastChild.remove();
}

const SVG = "http://www.w3.org/2000/svg";
function shape(name, attributes, role) {
  const made = document.createElementNS(SVG, name);
  for (const [key, value] of Object.entries(attributes)) made.setAttribute(key, value);
  if (role) made.setAttribute("class", role);
  return made;
}

const draw = {
  circle: (s) => shape("circle", { cx: s.x, cy: -s.y, r: s.radius }, `fill ${s.role}`),
  ring: (s) => shape("circle", { cx: s.x, cy: -s.y, r: s.radius }, `line ${s.role}`),
  dot: (s) => shape("circle", { cx: s.x, cy: -s.y, r: 0.06 }, `fill ${s.role}`),
  arrow: (s) => shape("line", { x1: s.x, y1: -s.y, x2: s.to_x, y2: -s.to_y, "marker-end": `url(#head-${s.role})` }, `line ${s.role}`),
  path: (s) => {
    const made = shape("polyline", { points: s.points.map(([x, y]) => `${x},${-y}`).join(" ") }, `line ${s.role}`);
    if (s.arrow) made.setAttribute("marker-end", `url(#head-${s.role})`);
    return made;
  },
  text: (s) => {
    const made = shape("text", { x: s.x, y: -s.y }, `${s.size} ${s.role}`);
    made.textContent = s.words;
    return made;
  },
};

function answer(told) {
  if (told.kind === "ack") {
    for (const number of messages.keys()) if (number < told.next) messages.delete(number);
  } else if (told.kind === "show") {
    show(told);
  } else if (told.kind === "known") {
    known(told);
  } else if (told.kind === "said") {
    told.words.forEach(note);
  }
}

function show(told) {
  if (told.phase === "asking" || told.phase === "resting") dispatchEvent(new Event("stickwright-busy"));
  told.words.forEach(note);
  const shapes = document.getElementById("shapes");
  shapes.replaceChildren(...told.picture.shapes.map((one) => draw[one.kind](one)));
  const words = told.hint || told.picture.words;
  if (words !== shownBefore) {
    document.getElementById("words").textContent = words;
    document.getElementById("picture-title").textContent = told.picture.words;
    shownBefore = words;
  }
  const raw = document.getElementById("raw");
  raw.setAttribute("visibility", told.raw ? "visible" : "hidden");
  if (told.raw) {
    raw.setAttribute("cx", told.raw[0]);
    raw.setAttribute("cy", -told.raw[1]);
  }
  const tuned = document.getElementById("tuned");
  tuned.setAttribute("visibility", told.tuned ? "visible" : "hidden");
  if (told.tuned) {
    tuned.setAttribute("cx", told.tuned[0]);
    tuned.setAttribute("cy", -told.tuned[1]);
  }
  for (const button of document.querySelectorAll("[data-do]")) {
    button.disabled = !told.may.includes(button.dataset.do);
  }
  root.dataset.phase = told.phase;
  document.getElementById("where").textContent = told.where;
  const lag = document.getElementById("lag");
  if (lag && lag.textContent !== (told.lag || "")) lag.textContent = told.lag || "";
  document.getElementById("kept").textContent = told.kept_words;
  devices(told);
}

let devicesBefore = "";
function devices(told) {
  const text = JSON.stringify([told.devices, told.chosen, told.second, told.phase === "waiting"]);
  if (text === devicesBefore) return;
  devicesBefore = text;
  const list = document.getElementById("devices");
  const focused = document.activeElement && document.activeElement.dataset.stick;
  list.replaceChildren();
  for (const device of told.devices) {
    for (const [place, stick] of device.sticks.entries()) {
      const item = document.createElement("li");
      const is = (one) => Boolean(one) && one.device === device.id && one.horizontal === stick.horizontal;
      item.append(stickButton(stick.name, `${device.id} ${place}`, is(told.chosen), told, { device: device.id, ...stick }));
      if (told.chosen && !is(told.chosen)) {
        const beside = { device: device.id, ...stick, second: true };
        item.append(stickButton(stick.beside, `${device.id} ${place} beside`, is(told.second), told, beside));
      }
      list.append(item);
    }
  }
  const again = focused && list.querySelector(`[data-stick="${CSS.escape(focused)}"]`);
  if (again) again.focus();
}

function stickButton(words, key, pressed, told, command) {
  const button = document.createElement("button");
  button.type = "button";
  button.className = "quiet";
  button.textContent = words;
  button.disabled = told.phase !== "waiting"; // a running task stays on the stick it was begun on
  button.setAttribute("aria-pressed", pressed ? "true" : "false");
  button.dataset.stick = key;
  button.addEventListener("click", () => say({ do: "choose", ...command }));
  return button;
}

function known(told) {
  document.getElementById("sentence").textContent = told.sentence;
  const body = document.getElementById("lines");
  body.replaceChildren(
    ...told.lines.map((one) => {
      const row = document.createElement("tr");
      const label = document.createElement("th");
      label.scope = "row";
      label.textContent = one.label;
      const words = document.createElement("td");
      words.textContent = one.words;
      const enough = document.createElement("td");
      enough.textContent = one.known;
      row.append(label, words, enough);
      return row;
    }),
  );
  document.getElementById("known").hidden = false;
  const more = document.getElementById("more");
  more.replaceChildren(
    ...told.more.map((one) => {
      const button = document.createElement("button");
      button.type = "button";
      button.className = "quiet";
      button.textContent = one.words;
      button.addEventListener("click", () => say({ do: "repeat", steps: one.steps }));
      return button;
    }),
  );
  const doubts = document.getElementById("doubts");
  doubts.replaceChildren(
    ...told.doubts.map((one) => {
      const item = document.createElement("li");
      item.textContent = one.text;
      return item;
    }),
  );
}

for (const button of document.querySelectorAll("[data-do]")) {
  button.addEventListener("click", () => {
    say({ do: button.dataset.do });
    if (button.dataset.do === "start" || button.dataset.do === "resume") root.scrollIntoView({ block: "start" }); // the picture first
  });
}
const tuning = document.getElementById("tuning");
if (tuning) tuning.addEventListener("change", () => say({ do: "tuned", on: tuning.checked }));

document.addEventListener("keydown", (event) => {
  if (event.key === "Escape") {
    event.preventDefault();
    say({ do: "stop" });
  } else if (event.key === "Enter" && (event.target === document.body || event.target === picture)) {
    event.preventDefault();
    say({ do: "confirm" });
  }
});
connect();
