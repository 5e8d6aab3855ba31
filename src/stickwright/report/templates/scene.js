"use strict";
(() => {
  const mounts = JSON.parse(document.getElementById("data").textContent);
  const canvas = document.getElementById("scene"), pen = canvas.getContext("2d");
  const choice = document.getElementById("choice"), told = document.getElementById("view");
  const names = document.getElementById("names");
  const calm = window.matchMedia("(prefers-reduced-motion: reduce)");
  const VIEWS = { above: [0, 90], side: [90, 0], front: [180, 0], start: [35, 28] };
  const ORDER = ["SEAT", "BODY", "SURFACES", "EDGES", "TUBES", "KEEP_OUT", "LANDMARKS", "CABLE", "MOUNT", "STICK"];
  const GREY = "#767676", STEP = 10, QUAD = [[0, 1, 3, 2], [4, 5, 7, 6], [0, 1, 5, 4], [2, 3, 7, 6], [0, 2, 6, 4], [1, 3, 7, 5]];
  let turn = VIEWS.start[0], rise = VIEWS.start[1], zoom = 1, moving = 0, shown = 0;

  const rad = (degrees) => degrees * Math.PI / 180;

  // Right, up and towards the viewer: seen from behind the player at 0, from the player's right at 90, from the front at 180.
  function axes() {
    const a = rad(turn), e = rad(rise);
    return [[Math.cos(a), Math.sin(a), 0],
      [-Math.sin(a) * Math.sin(e), Math.cos(a) * Math.sin(e), Math.cos(e)],
      [Math.sin(a) * Math.cos(e), -Math.cos(a) * Math.cos(e), Math.sin(e)]];
  }
  const dot = (p, q) => p[0] * q[0] + p[1] * q[1] + p[2] * q[2];

  function draw() {
    const ratio = window.devicePixelRatio || 1, box = canvas.getBoundingClientRect();
    canvas.width = Math.max(1, Math.round(box.width * ratio));
    canvas.height = Math.max(1, Math.round(box.height * ratio));
    pen.setTransform(ratio, 0, 0, ratio, 0, 0);
    pen.fillStyle = "#fff";
    pen.fillRect(0, 0, box.width, box.height);
    const one = mounts[shown], [right, up, near] = axes();
    const scale = zoom * Math.min(box.width, box.height) / one.across;
    const at = (p) => {
      const q = [p[0] - one.middle[0], p[1] - one.middle[1], p[2] - one.middle[2]];
      return [box.width / 2 + dot(q, right) * scale, box.height / 2 - dot(q, up) * scale, dot(q, near)];
    };
    const depth = (shape) => shape.points.reduce((sum, p) => sum + at(p)[2], 0) / shape.points.length;
    const shapes = [...one.shapes].sort((a, b) => ORDER.indexOf(a.layer) - ORDER.indexOf(b.layer) || depth(a) - depth(b));
    for (const shape of shapes) drawShape(shape, at, scale);
    for (const line of one.distances) drawDistance(line, at);
    if (one.forward) drawForward(one.forward, at);
    if (names.getAttribute("aria-pressed") === "true") label(one, at, box);
    tell();
  }

  function path(spots, closed) {
    pen.beginPath();
    spots.forEach((spot, place) => (place ? pen.lineTo(spot[0], spot[1]) : pen.moveTo(spot[0], spot[1])));
    if (closed) pen.closePath();
  }
  function stroke(spots, width, colour, dash, closed) {
    pen.lineWidth = width; pen.strokeStyle = colour || "#000"; pen.setLineDash(dash || []); pen.lineJoin = "round"; pen.lineCap = "round";
    path(spots, closed);
    pen.stroke();
    pen.setLineDash([]);
  }

  function drawShape(shape, at, scale) {
    const spots = shape.points.map(at), light = shape.layer === "BODY" || shape.layer === "SEAT";
    if (shape.form === "dot") {
      pen.beginPath();
      pen.arc(spots[0][0], spots[0][1], shape.layer === "MOUNT" ? 5 : 4, 0, 7);
      pen.fillStyle = shape.layer === "MOUNT" ? "#000" : "#fff"; pen.fill();
      pen.lineWidth = 2; pen.strokeStyle = "#000"; pen.stroke();
    } else if (shape.form === "path" && !shape.thick) {
      stroke(spots, 2.5, "#000", [3, 6]);
    } else if (shape.form === "bar" || shape.form === "path") {
      const wide = Math.max(shape.layer === "MOUNT" ? 8 : 4, shape.thick * scale);
      stroke(spots, wide + (light ? 2 : 4), light ? GREY : "#000");
      stroke(spots, wide, "#fff");
    } else {
      const faces = QUAD.map((corners) => corners.map((c) => spots[c])).sort((a, b) => mean(a) - mean(b));
      if (shape.layer === "KEEP_OUT") hatch(faces);
      for (const face of faces) {
        if (shape.layer === "STICK") { path(face, true); pen.fillStyle = "#fff"; pen.fill(); }
        const dash = shape.layer === "KEEP_OUT" ? [9, 5] : shape.sure || light ? [] : [5, 4];
        stroke(face, shape.layer === "STICK" ? 2.5 : light ? 1 : 1.6, light ? GREY : "#000", dash, true);
      }
    }
  }
  const mean = (face) => face.reduce((sum, spot) => sum + spot[2], 0);

  function hatch(faces) {
    pen.save();
    pen.beginPath();
    for (const face of faces) {
      face.forEach((spot, place) => (place ? pen.lineTo(spot[0], spot[1]) : pen.moveTo(spot[0], spot[1])));
      pen.closePath();
    }
    pen.clip();
    const all = faces.flat(), xs = all.map((s) => s[0]), ys = all.map((s) => s[1]);
    const low = Math.min(...xs) + Math.min(...ys), high = Math.max(...xs) + Math.max(...ys), tall = Math.max(...ys), deep = Math.min(...ys);
    pen.lineWidth = 1; pen.strokeStyle = "#000";
    for (let sum = Math.ceil(low / 14) * 14; sum < high; sum += 14) {
      pen.beginPath(); pen.moveTo(sum - deep, deep); pen.lineTo(sum - tall, tall); pen.stroke();
    }
    pen.restore();
  }

  function head(from, to, size) {
    const far = Math.hypot(to[0] - from[0], to[1] - from[1]) || 1, x = (to[0] - from[0]) / far, y = (to[1] - from[1]) / far;
    const foot = [to[0] - x * size, to[1] - y * size];
    path([to, [foot[0] - y * size * .4, foot[1] + x * size * .4], [foot[0] + y * size * .4, foot[1] - x * size * .4]], true);
    pen.fillStyle = "#000"; pen.fill();
  }
  function drawForward(arrow, at) {
    const [from, to] = arrow.map(at);
    stroke([from, to], 3.5);
    head(from, to, 15);
  }
  function drawDistance(line, at) {
    const [from, to] = [line.from, line.to].map(at);
    if (Math.hypot(to[0] - from[0], to[1] - from[1]) < 12) return;
    stroke([from, to], 1.2);
    head(from, to, 9); head(to, from, 9);
  }

  // Names beside their things, pushed down or up until none covers another; a thin line leads back.
  function label(one, at, box) {
    const taken = [], place = (text, spot, bold) => {
      pen.font = (bold ? "bold " : "") + "15px sans-serif";
      const wide = pen.measureText(text).width + 8, high = 21;
      if (spot[0] < 0 || spot[0] > box.width || spot[1] < 0 || spot[1] > box.height) return;
      for (let step = 0; step < 60; step += 1) {
        const off = (step % 2 ? -1 : 1) * Math.ceil(step / 2) * 11;
        const x = Math.min(Math.max(2, spot[0] + (step < 30 ? 8 : -wide - 8)), box.width - wide - 2), y = spot[1] - 10 + off;
        if (y < 2 || y + high > box.height - 2) continue;
        if (taken.some((t) => x < t[0] + t[2] && t[0] < x + wide && y < t[1] + t[3] && t[1] < y + high)) continue;
        taken.push([x, y, wide, high]);
        const end = [Math.min(Math.max(spot[0], x), x + wide), Math.min(Math.max(spot[1], y), y + high)];
        stroke([spot, end], 1);
        pen.fillStyle = "rgba(255,255,255,.9)"; pen.fillRect(x, y, wide, high);
        pen.fillStyle = "#000"; pen.fillText(text, x + 4, y + 15.5);
        return;
      }
    };
    const middle = (points) => [0, 1, 2].map((k) => points.reduce((sum, p) => sum + p[k], 0) / points.length);
    if (one.forward) place("player's forward", at(one.forward[1]), true);
    for (const line of one.distances) place(line.text, at(middle([line.from, line.to])), true);
    for (const layer of [...ORDER].reverse()) {
      for (const shape of one.shapes) {
        if (shape.layer === layer && shape.told) {
          place(shape.name, at(middle(shape.points)), layer === "STICK" || layer === "MOUNT");
        }
      }
    }
  }

  function tell() {
    const side = [["from behind", 0], ["from the player's right", 90], ["from the front", 180], ["from the player's left", 270], ["from behind", 360]];
    const round = ((turn % 360) + 360) % 360;
    const [words, whole] = side.reduce((best, one) => (Math.abs(one[1] - round) < Math.abs(best[1] - round) ? one : best));
    const off = Math.round(round - whole);
    const height = rise > 0 ? Math.round(rise) + "° from above" : rise < 0 ? Math.round(-rise) + "° from below" : "level";
    const text = Math.round(rise) === 90 ? "Seen from above" : "Seen " + words + (off ? ", turned " + Math.abs(off) + "°" : "") + ", " + height;
    const all = text + "; enlarged " + zoom.toFixed(1) + " times.";
    if (!moving && told.textContent !== all) told.textContent = all;
    for (const button of document.querySelectorAll("[data-view]")) {
      const [a, e] = VIEWS[button.dataset.view];
      button.setAttribute("aria-pressed", String(Math.abs(round - a) < .5 && Math.abs(rise - e) < .5));
    }
  }

  function go(toTurn, toRise) {
    const fromTurn = turn, fromRise = rise, way = ((toTurn - turn) % 360 + 540) % 360 - 180, begin = performance.now();
    cancelAnimationFrame(moving);
    if (calm.matches) { moving = 0; turn = toTurn; rise = toRise; draw(); return; }
    const frame = (now) => {
      const share = Math.min(1, (now - begin) / 350), eased = share * share * (3 - 2 * share);
      turn = fromTurn + way * eased; rise = fromRise + (toRise - fromRise) * eased;
      moving = share < 1 ? requestAnimationFrame(frame) : 0;
      draw();
    };
    moving = requestAnimationFrame(frame);
  }
  function by(turned, risen) {
    cancelAnimationFrame(moving); moving = 0;
    turn = ((turn + turned) % 360 + 360) % 360; rise = Math.min(90, Math.max(-30, rise + risen));
    draw();
  }
  function enlarge(times) { zoom = Math.min(8, Math.max(.4, zoom * times)); draw(); }

  const ACTS = { left: () => by(-STEP, 0), right: () => by(STEP, 0), up: () => by(0, STEP), down: () => by(0, -STEP),
    larger: () => enlarge(1.25), smaller: () => enlarge(.8) };
  for (const button of document.querySelectorAll("[data-view]")) button.addEventListener("click", () => go(...VIEWS[button.dataset.view]));
  for (const button of document.querySelectorAll("[data-act]")) button.addEventListener("click", () => ACTS[button.dataset.act]());
  names.addEventListener("click", () => {
    names.setAttribute("aria-pressed", String(names.getAttribute("aria-pressed") !== "true")); draw();
  });
  if (choice) choice.addEventListener("change", () => { shown = Number(choice.value); describe(); draw(); });
  const KEYS = { ArrowLeft: "left", ArrowRight: "right", ArrowUp: "up", ArrowDown: "down", "+": "larger", "=": "larger", "-": "smaller" };
  canvas.addEventListener("keydown", (event) => {
    const act = KEYS[event.key];
    if (!act || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    ACTS[act]();
  });
  canvas.addEventListener("wheel", (event) => {
    if (document.activeElement !== canvas) return;  // the page scrolls until the picture is chosen
    event.preventDefault();
    enlarge(event.deltaY < 0 ? 1.1 : 1 / 1.1);
  }, { passive: false });
  let held = null;
  canvas.addEventListener("pointerdown", (event) => { held = [event.clientX, event.clientY]; canvas.setPointerCapture(event.pointerId); canvas.focus(); });
  canvas.addEventListener("pointermove", (event) => {
    if (!held) return;
    by(-(event.clientX - held[0]) * .4, (event.clientY - held[1]) * .4);
    held = [event.clientX, event.clientY];
  });
  for (const kind of ["pointerup", "pointercancel"]) canvas.addEventListener(kind, () => { held = null; });
  function describe() { canvas.setAttribute("aria-label", mounts[shown].alt + " The same is in the tables below."); }
  window.addEventListener("resize", draw);
  document.getElementById("controls").hidden = false;
  describe();
  draw();
})();
