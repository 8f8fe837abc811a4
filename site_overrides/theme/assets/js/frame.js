// The lines with which another website shows a worksheet in a frame: this site's address is put into them. In such a
// frame the page tells the one around it how high it is, and nothing else.

/** In a frame: tell the page around it how high this one is, whenever that changes. */
export function tellHeight() {
  if (parent === window || !document.body.classList.contains("ss-embed")) return;
  const content = document.querySelector("main");
  const tell = () => {
    const height = Math.ceil(content.getBoundingClientRect().bottom + scrollY);
    parent.postMessage({ stokeAndStoreHeight: height }, "*"); // the height is no secret, whoever shows the frame
  };
  new ResizeObserver(tell).observe(content);
}

/** Complete the lines of every worksheet on the page, and make them easy to copy. */
export function wireFrames() {
  for (const box of document.querySelectorAll("[data-ss-frame]")) {
    const worksheet = box.closest(".ss-sheet").dataset.worksheet;
    const embed = new URL(`../../embed/${worksheet}/`, import.meta.url).href;
    const guide = `${location.href.split("#")[0]}#${worksheet}`;
    box.value = box.value.replace("{embed}", embed).replace("{guide}", guide);
    box.addEventListener("focus", () => box.select());
  }
}
