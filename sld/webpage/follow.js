"use strict";
(() => {
  // shows the page again when the file was saved, as far as it was brought closer
  const kept = JSON.parse(sessionStorage.getItem("view") || "null");
  const shown = () => document.querySelector(".sheet.shown svg");
  if (kept && shown() && document.getElementById(kept.sheet)) {
    document.querySelector(`nav a[href="#${kept.sheet}"]`).click();
    shown().setAttribute("viewBox", kept.box);
    if (kept.hash) history.replaceState(null, "", kept.hash);
  }
  new EventSource(document.querySelector("meta[name=feed]").content).addEventListener("changed", () => {
    const sheet = shown();
    if (sheet) {
      const view = { sheet: sheet.parentNode.id, box: sheet.getAttribute("viewBox"), hash: location.hash };
      sessionStorage.setItem("view", JSON.stringify(view));
    }
    location.reload();
  });
})();
