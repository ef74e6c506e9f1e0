/** The search of the reference page: entries stay that hold every word that was typed. Without it the page is a whole list. */
const plain = (text: string): string => text.normalize("NFD").replace(/\p{M}/gu, "").toLowerCase();

const box = document.querySelector<HTMLInputElement>("#search");
const count = document.querySelector<HTMLElement>("#found");
/** An entry of the list, with all that the page says of its function. */
const entries = [...document.querySelectorAll<HTMLElement>("nav li")].map((item) => ({
  item,
  held: plain(document.querySelector(item.querySelector("a")!.hash)!.textContent),
}));
const families = [...document.querySelectorAll<HTMLElement>("nav section")];

function search(): void {
  const words = plain(box!.value).split(/\s+/).filter(Boolean);
  for (const { item, held } of entries) item.hidden = !words.every((word) => held.includes(word));
  for (const family of families) family.hidden = family.querySelector("li:not([hidden])") === null;
  const found = entries.filter(({ item }) => !item.hidden).length;
  count!.textContent = found === 0 ? "No function holds all these words. Try fewer." : `${found} of ${entries.length}`;
}

if (box && count) {
  box.closest("form")!.hidden = false;
  box.addEventListener("input", search);
  box.closest("form")!.addEventListener("submit", (event) => event.preventDefault());
  search();
}

export {};
