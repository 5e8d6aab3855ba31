// Parts of a page that are folded away. Which of them are open stands in the address, so that a link, a bookmark and the
// way back show the same; a link to something inside opens what it lies in; for printing everything is open.
const folds = [...document.querySelectorAll("details.fold")];

const reveal = (id) => {
  const aim = document.getElementById(id);
  for (let part = aim; part; part = part.parentElement) if (part.matches("details")) part.open = true;
  return aim;
};

const named = () => location.hash.slice(1).split(",").filter(Boolean).map(decodeURIComponent);

const follow = () => {
  const found = named().map(reveal).filter(Boolean);
  if (found.length === 1) found[0].scrollIntoView();
};

const keep = () => {
  const open = folds.filter((fold) => fold.open).map((fold) => encodeURIComponent(fold.id));
  history.replaceState(history.state, "", open.length ? "#" + open.join(",") : location.pathname + location.search);
};

let before = null;
addEventListener("beforeprint", () => {
  before = [...document.querySelectorAll("details:not([open])")];
  for (const part of before) part.open = true;
});
addEventListener("afterprint", () => {
  for (const part of before ?? []) part.open = false;
  before = null;
});
addEventListener("hashchange", follow);
follow();
for (const fold of folds) fold.addEventListener("toggle", () => { if (!before) keep(); });
