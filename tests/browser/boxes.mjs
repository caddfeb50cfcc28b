// What a person would see at once: something cut off, pushed out of the page, or lying on something else.
// Runs inside the page; answers a list of complaints.
export function complaintsAboutBoxes() {
  const complaints = [];
  const width = document.documentElement.clientWidth;
  const short = (words) => words.trim().replace(/\s+/g, ' ').slice(0, 40);

  if (document.documentElement.scrollWidth > width) {
    complaints.push(`the page is ${document.documentElement.scrollWidth} wide in a window of ${width}`);
  }

  // every run of words and every picture, with the box it is seen in
  const seen = [];
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  for (let node = walker.nextNode(); node; node = walker.nextNode()) {
    if (!node.data.trim() || node.parentElement.closest('.away, svg')) continue;
    const range = document.createRange();
    range.selectNodeContents(node);
    for (const box of range.getClientRects()) seen.push({ what: short(node.data), box, block: node.parentElement });
  }
  const pictures = [...document.querySelectorAll('svg')].filter((svg) => getComputedStyle(svg).display !== 'none');
  for (const svg of pictures) {
    seen.push({ what: 'a picture', box: svg.getBoundingClientRect(), block: svg });
  }
  if (seen.length === 0) complaints.push('nothing is seen');

  for (const { what, box } of seen) {
    if (box.left < -0.5 || box.right > width + 0.5) complaints.push(`out of the page: ${what}`);
    if (box.width === 0 || box.height === 0) complaints.push(`without a size: ${what}`);
  }

  for (const element of document.querySelectorAll('body *')) {
    if (element.closest('svg, .away')) continue;
    const style = getComputedStyle(element);
    if (style.overflowX !== 'visible' && element.scrollWidth > element.clientWidth + 1) complaints.push(`cut off: ${short(element.textContent)}`);
  }

  // lines of one text may lean on each other by their ascenders; two texts may not
  const lean = 3;
  seen.sort((a, b) => a.box.top - b.box.top);
  for (let i = 0; i < seen.length; i++) {
    for (let j = i + 1; j < seen.length && seen[j].box.top < seen[i].box.bottom - lean; j++) {
      const a = seen[i].box;
      const b = seen[j].box;
      if (seen[i].block === seen[j].block) continue;
      if (Math.min(a.right, b.right) - Math.max(a.left, b.left) > 1 && Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > lean) {
        complaints.push(`on each other: ${seen[i].what} / ${seen[j].what}`);
      }
    }
  }

  for (const svg of pictures) {
    const frame = svg.getBoundingClientRect();
    const words = [...svg.querySelectorAll('text')].map((text) => ({ what: text.textContent, box: text.getBoundingClientRect() }));
    for (const { what, box } of words) {
      // a glyph's box is higher than its ink
      if (box.left < frame.left - 0.5 || box.right > frame.right + 0.5 || box.top < frame.top - 4 || box.bottom > frame.bottom + 4) {
        complaints.push(`out of its picture: ${what}`);
      }
    }
    for (let i = 0; i < words.length; i++) {
      for (let j = i + 1; j < words.length; j++) {
        const a = words[i].box;
        const b = words[j].box;
        if (Math.min(a.right, b.right) - Math.max(a.left, b.left) > 0.5 && Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 4) {
          complaints.push(`on each other in a picture: ${words[i].what} / ${words[j].what}`);
        }
      }
    }
  }

  return [...new Set(complaints)];
}
