"use strict";
(() => {
  const { texts, devices, words } = JSON.parse(document.getElementById("data").textContent);
  const byKey = new Map(devices.map(([key, name, what, anchor, quantities]) =>
    [key, { key, name, what: texts[what], anchor, quantities }]));
  const byAnchor = new Map();
  for (const device of byKey.values()) if (device.anchor && !byAnchor.has(device.anchor)) byAnchor.set(device.anchor, device);
  const main = document.querySelector("main"), beside = document.getElementById("beside");
  const sheets = [...document.querySelectorAll(".sheet")];
  const links = [...document.querySelectorAll("nav a")];
  const whole = new Map(sheets.map(sheet => {
    const { x, y, width, height } = sheet.querySelector("svg").viewBox.baseVal;
    return [sheet, { x, y, width, height }];
  }));
  const element = (name, text, attributes = {}) => {
    const made = document.createElement(name);
    if (text) made.textContent = text;
    for (const [key, value] of Object.entries(attributes)) made.setAttribute(key, value);
    return made;
  };
  let shown = sheets[0], mark = null;

  // the view of a sheet: the part of it that is seen, in millimetres
  const view = () => shown.querySelector("svg").viewBox.baseVal;
  const see = ({ x, y, width, height }) =>
    shown.querySelector("svg").setAttribute("viewBox", [x, y, width, height].map(n => n.toFixed(3)).join(" "));
  const scale = () => { const m = shown.querySelector("svg").getScreenCTM(); return m ? m.a : 1; };
  const at = event => {
    const m = shown.querySelector("svg").getScreenCTM();
    return m ? { x: (event.clientX - m.e) / m.a, y: (event.clientY - m.f) / m.d } : { x: 0, y: 0 };
  };
  const closer = (factor, about) => {
    const now = view(), full = whole.get(shown);
    const width = Math.min(Math.max(now.width / factor, 15), full.width * 2), by = width / now.width;
    const point = about || { x: now.x + now.width / 2, y: now.y + now.height / 2 };
    see({ x: point.x - (point.x - now.x) * by, y: point.y - (point.y - now.y) * by, width, height: now.height * by });
  };
  const move = (dx, dy) => { const now = view(); see({ x: now.x + dx, y: now.y + dy, width: now.width, height: now.height }); };
  const show = sheet => {
    shown = sheet;
    sheets.forEach(each => each.classList.toggle("shown", each === sheet));
    links.forEach((link, n) => sheets[n] === sheet ? link.setAttribute("aria-current", "true") : link.removeAttribute("aria-current"));
  };

  // pointer and keys
  const held = new Map();
  let moved = false;
  main.addEventListener("pointerdown", event => {
    if (event.target.closest("#tools")) return;
    held.set(event.pointerId, { x: event.clientX, y: event.clientY });
    moved = false;
  });
  main.addEventListener("pointermove", event => {
    const before = held.get(event.pointerId);
    if (!before) return;
    const dx = event.clientX - before.x, dy = event.clientY - before.y;
    if (!moved && Math.hypot(dx, dy) < 4) return;
    if (!moved) main.setPointerCapture(event.pointerId);
    moved = true;
    if (held.size === 1) move(-dx / scale(), -dy / scale());
    else {
      const other = [...held].find(([id]) => id !== event.pointerId)[1];
      const was = Math.hypot(before.x - other.x, before.y - other.y), is = Math.hypot(event.clientX - other.x, event.clientY - other.y);
      if (was > 0) closer(is / was, at({ clientX: (event.clientX + other.x) / 2, clientY: (event.clientY + other.y) / 2 }));
    }
    held.set(event.pointerId, { x: event.clientX, y: event.clientY });
  });
  for (const name of ["pointerup", "pointercancel"]) addEventListener(name, event => held.delete(event.pointerId));
  main.addEventListener("wheel", event => {
    event.preventDefault();
    closer(Math.exp(-Math.sign(event.deltaY) * Math.min(Math.abs(event.deltaY), 100) / 400), at(event));
  }, { passive: false });
  // between the strokes of a symbol is nothing to hit: the smallest one around the pointer is meant
  const meant = ({ clientX, clientY }) => [...shown.querySelectorAll(".symbol[tabindex]")]
    .map(symbol => ({ symbol, box: symbol.getBoundingClientRect() }))
    .filter(({ box }) => clientX > box.left - 3 && clientX < box.right + 3 && clientY > box.top - 3 && clientY < box.bottom + 3)
    .sort((a, b) => a.box.width * a.box.height - b.box.width * b.box.height)[0]?.symbol;
  main.addEventListener("click", event => {
    const symbol = !moved && !event.target.closest("#tools") && (event.target.closest(".symbol[tabindex]") || meant(event));
    if (symbol) choose(byAnchor.get(symbol.id), false);
  });
  main.addEventListener("keydown", event => {
    const symbol = event.target.closest(".symbol"), step = view().width / 8;
    if (symbol && (event.key === "Enter" || event.key === " ")) choose(byAnchor.get(symbol.id), false);
    else if (event.key === "ArrowLeft") move(-step, 0);
    else if (event.key === "ArrowRight") move(step, 0);
    else if (event.key === "ArrowUp") move(0, -step);
    else if (event.key === "ArrowDown") move(0, step);
    else if (event.key === "+" || event.key === "=") closer(1.5);
    else if (event.key === "-") closer(1 / 1.5);
    else if (event.key === "0") see(whole.get(shown));
    else return;
    event.preventDefault();
  });

  // one device
  const device = element("section", "", { id: "device", "aria-live": "polite" });
  const tell = chosen => {
    device.replaceChildren(element("h2", chosen ? `${chosen.name} ${chosen.what}` : words.numbers));
    if (!chosen) { device.append(element("p", words.choose)); return; }
    if (!chosen.anchor) device.append(element("p", words.undrawn));
    for (const finding of document.querySelectorAll("#findings li"))
      if (finding.querySelector("a")?.dataset.device === chosen.key) device.append(...[...finding.children].map(each => each.cloneNode(true)));
    for (const [symbol, meaning, value, steps] of chosen.quantities) {
      device.append(element("h3", [texts[symbol], texts[meaning]].filter(Boolean).join("  ") + ": " + texts[value]));
      const list = element("dl");
      for (const [head, said] of steps) list.append(element("dt", texts[head]), element("dd", texts[said]));
      device.append(list);
    }
  };
  const choose = (chosen, lead = true) => {
    if (!chosen) return;
    tell(chosen);
    if (mark) mark.remove();
    mark = null;
    const symbol = chosen.anchor && document.getElementById(chosen.anchor);
    if (!symbol) return;
    show(symbol.closest(".sheet"));
    const box = symbol.getBBox(), full = whole.get(shown);
    mark = document.createElementNS("http://www.w3.org/2000/svg", "rect");
    const edges = { class: "mark", x: box.x - 1, y: box.y - 1, width: box.width + 2, height: box.height + 2, rx: 1 };
    for (const [key, value] of Object.entries(edges)) mark.setAttribute(key, value);
    symbol.parentNode.insertBefore(mark, symbol);
    if (lead) {
      const width = Math.min(full.width, Math.max(120, box.width * 3)), height = width * full.height / full.width;
      see({ x: box.x + box.width / 2 - width / 2, y: box.y + box.height / 2 - height / 2, width, height });
    }
    history.replaceState(null, "", "#" + chosen.anchor);
  };

  // search
  const label = element("label", words.search, { for: "search" });
  const search = element("input", "", { id: "search", type: "search", autocomplete: "off", "aria-controls": "matches" });
  const matches = element("ul", "", { id: "matches", "aria-live": "polite" });
  const look = () => {
    const asked = search.value.trim().toLocaleLowerCase();
    const found = asked ? [...byKey.values()].filter(each => `${each.name} ${each.what}`.toLocaleLowerCase().includes(asked)) : [];
    matches.replaceChildren(...found.slice(0, 50).map(each => {
      const item = element("li"), button = element("button", `${each.name} ${each.what}`, { type: "button" });
      button.addEventListener("click", () => choose(each));
      item.append(button);
      return item;
    }));
    if (asked && !found.length) matches.append(element("li", words.none));
    return found;
  };
  search.addEventListener("input", look);
  search.addEventListener("keydown", event => {
    if (event.key !== "Enter") return;
    const found = look(), exact = found.find(each => each.name.toLocaleLowerCase() === search.value.trim().toLocaleLowerCase());
    choose(exact || found[0]);
  });

  // links to devices and sheets
  document.addEventListener("click", event => {
    const link = event.target.closest("a");
    if (!link) return;
    if (link.dataset.device) choose(byKey.get(link.dataset.device));
    else if (links.includes(link)) { show(sheets[links.indexOf(link)]); history.replaceState(null, "", link.hash); }
    else return;
    event.preventDefault();
  });

  // the page with its program
  document.documentElement.classList.add("live");
  for (const symbol of document.querySelectorAll(".symbol"))
    if (byAnchor.has(symbol.id)) { symbol.setAttribute("tabindex", "0"); symbol.setAttribute("role", "button"); }
  const tools = element("div", "", { id: "tools", role: "group", "aria-label": words.keys, title: words.keys });
  for (const [sign, word, act] of [["+", words.closer, () => closer(1.5)], ["−", words.further, () => closer(1 / 1.5)],
      ["⤢", words.whole, () => see(whole.get(shown))]]) {
    const button = element("button", sign, { type: "button", "aria-label": word, title: word });
    button.addEventListener("click", act);
    tools.append(button);
  }
  main.append(tools);
  main.setAttribute("tabindex", "0");
  main.setAttribute("aria-label", words.keys);
  beside.prepend(label, search, matches, device);
  for (const link of document.querySelectorAll("#findings a:not([href])")) link.setAttribute("href", "#device");
  tell(null);
  const begin = decodeURIComponent(location.hash.slice(1));
  show(sheets.find(each => each.id === begin) || sheets[0]);
  choose(byAnchor.get(begin));

})();
