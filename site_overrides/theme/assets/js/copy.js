// The link with the reader's numbers: into the clipboard, or as text where the browser refuses that.

/** Copy the page's address with `link` behind it, and say so in `place` in the words of `says`. */
export async function copyLink(link, place, says) {
  const address = location.href.split("#")[0] + link;
  try {
    await navigator.clipboard.writeText(address);
    place.textContent = says.sayCopied;
  } catch {
    const box = document.createElement("input");
    box.readOnly = true;
    box.value = address;
    box.setAttribute("aria-label", says.sayRefused);
    place.replaceChildren(says.sayRefused, box);
    box.focus();
    box.select();
  }
}
