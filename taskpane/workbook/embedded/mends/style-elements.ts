/**
 * Style elements that the grid's libraries put into the page's head, turned into sheets made by script.
 *
 * Why: the page's policy (style-src 'self') forbids style elements; a sheet that a script constructs is allowed (CSP3
 * governs elements and attributes, not the CSS object model). Without this the grid's messages and colours stay unstyled
 * and the browser reports each element as a breach. Import this before anything of the grid.
 */
const byId = new Map<string, CSSStyleSheet>();

function adopt(element: HTMLStyleElement): void {
  const sheet = new CSSStyleSheet();
  const former = element.id === "" ? undefined : byId.get(element.id);
  const others = document.adoptedStyleSheets.filter((one) => one !== former);
  document.adoptedStyleSheets = [...others, sheet];
  if (element.id !== "") byId.set(element.id, sheet);
  const refill = () => sheet.replaceSync(element.textContent ?? "");
  refill();
  new MutationObserver(refill).observe(element, { childList: true, characterData: true, subtree: true });
  const withdraw = () => {
    document.adoptedStyleSheets = document.adoptedStyleSheets.filter((one) => one !== sheet);
  };
  // what libraries ask of an element that stands in the head
  Object.defineProperties(element, {
    sheet: { value: sheet },
    parentNode: { value: { removeChild: withdraw } },
    remove: { value: withdraw },
  });
}

function adopting<T extends "appendChild" | "insertBefore">(method: T): void {
  const { head } = document;
  const original = head[method].bind(head) as (node: Node, before?: Node | null) => Node;
  head[method] = ((node: Node, before?: Node | null) => {
    if (!(node instanceof HTMLStyleElement)) return method === "appendChild" ? original(node) : original(node, before);
    adopt(node);
    return node;
  }) as HTMLHeadElement[T];
}

adopting("appendChild");
adopting("insertBefore");
