// Says what a new passphrase is worth while it is typed. The sentence comes from the app on this machine; nothing is kept.
const field = document.getElementById("passphrase");
const words = document.getElementById("strength");
let timer = 0;
field?.addEventListener("input", () => {
  clearTimeout(timer);
  timer = setTimeout(async () => {
    const answer = await fetch("/start/strength", {
      method: "POST",
      headers: { "X-Csrf": document.body.dataset.csrf, "Content-Type": "application/x-www-form-urlencoded" },
      body: new URLSearchParams({ passphrase: field.value }),
    });
    words.textContent = field.value && answer.ok ? (await answer.json()).words : "";
  }, 350);
});
