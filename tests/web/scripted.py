"""A stick that a test moves inside the page, in place of the browser's own; it remembers every value that the page read."""

PAD = """
(() => {
  const buttons = Array.from({ length: 17 }, () => ({ pressed: false, touched: false, value: 0 }));
  const pad = { id: "Scripted pad", index: 0, connected: true, mapping: "standard", timestamp: 0, axes: [0, 0, 0, 0], buttons };
  let here = true;
  if (location.protocol === "about:") return;
  const sent = JSON.parse(sessionStorage.getItem("scripted") ?? "[]"); // a reload does not forget
  addEventListener("pagehide", () => sessionStorage.setItem("scripted", JSON.stringify(sent)));
  Object.defineProperty(Navigator.prototype, "getGamepads", {
    configurable: true,
    value: () => {
      if (!here) return [null, null, null, null];
      const turn = 2.2 * performance.now() / 1000 + 1e-7 * sent.length; // no value twice
      pad.axes = [0.9 * Math.cos(turn), 0.9 * Math.sin(turn), 0, 0];
      sent.push([pad.axes[0], pad.axes[1]]);
      return [pad, null, null, null];
    },
  });
  window.scripted = { sent, unplug() { here = false; }, plug() { here = true; } };
})();
"""
"""For `add_init_script`: what it puts on the page is no part of it, so that the page's own policy stays as it is."""
