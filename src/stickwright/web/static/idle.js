// After the minutes set without anybody touching the page, show the lock instead of a player's figures.
// The server closes the records on its own; this only clears the screen.
const minutes = Number(document.body.dataset.idleMinutes);
if (minutes > 0) {
  let timer = 0;
  const begin = () => {
    clearTimeout(timer);
    timer = setTimeout(() => location.replace("/start?idle=yes&then=" + encodeURIComponent(location.pathname)), minutes * 60000);
  };
  for (const kind of ["pointerdown", "keydown", "scroll", "stickwright-busy"]) addEventListener(kind, begin, { passive: true });
  begin();
}
