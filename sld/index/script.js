"use strict";
document.documentElement.classList.add("live");
document.addEventListener("DOMContentLoaded", () => {
  const MORE = 120;
  const specs = [...document.querySelectorAll("#specs > li")];
  const texts = specs.map(each => each.textContent.toLowerCase());
  const form = document.getElementById("choice");
  const search = document.getElementById("search");
  const boxes = [...document.querySelectorAll("input[name=state]")];
  const shown = document.getElementById("shown");
  const more = document.getElementById("more");
  let most = MORE;
  const choose = () => {
    const words = search.value.toLowerCase().split(/\s+/).filter(Boolean);
    const states = new Set(boxes.filter(each => each.checked).map(each => each.value));
    let count = 0;
    specs.forEach((each, at) => {
      const fits = states.has(each.dataset.state) && words.every(word => texts[at].includes(word));
      count += fits ? 1 : 0;
      each.classList.toggle("shown", fits && count <= most);
    });
    more.hidden = count <= most;
    shown.textContent = `${count} of ${specs.length}`;
  };
  form.addEventListener("input", () => { most = MORE; choose(); });
  form.addEventListener("submit", event => event.preventDefault());
  more.addEventListener("click", () => { most += MORE; choose(); });
  choose();
});
