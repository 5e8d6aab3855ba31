// Enter goes to the next field, as on a keypad; a unit chosen once is taken for every field still empty.
const form = document.getElementById("readings-form");
const fields = [...form.querySelectorAll('input[type="text"]')];
form.addEventListener("keydown", (event) => {
  if (event.key !== "Enter" || !fields.includes(event.target)) return;
  const next = fields[fields.indexOf(event.target) + 1];
  event.preventDefault();
  if (next) {
    next.focus();
    next.select();
  } else {
    form.querySelector("button").focus();
  }
});
form.addEventListener("change", (event) => {
  if (!event.target.matches("select.unit-choice")) return;
  const stem = event.target.name.split("_unit")[0];
  for (const other of form.querySelectorAll("select.unit-choice")) {
    const field = other.parentElement.querySelector("input");
    const same = other.name.split("_unit")[0] === stem || (stem === "force" && other.name === "again_unit");
    if (same && field.value.trim() === "") other.value = event.target.value;
  }
});
