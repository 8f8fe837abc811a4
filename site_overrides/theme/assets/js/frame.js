// The lines with which another website shows a worksheet in a frame: this site's address is put into them.

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
