namespace Coilwright.Browser.Tests.Checks;

/// <summary>Finds text that is cut off by what holds it, and text that another text stands on.</summary>
internal static class CrowdedText
{
    /// <summary>
    /// Lines of text are taken as the boxes that the browser lays them in. A part that scrolls may hide what is in it; what stays in place
    /// while the page moves may cover it; turned text is not looked at. Two lines of one paragraph touch by up to a third of their height.
    /// </summary>
    public const string Script = """
() => {
  const found = [], lines = [];
  const about = element => `${element.tagName.toLowerCase()}.${element.getAttribute('class') ?? ''}`;
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  for (let node = walker.nextNode(); node; node = walker.nextNode()) {
    const element = node.parentElement;
    if (!node.data.trim() || !element) continue;
    if (['SCRIPT', 'STYLE', 'OPTION', 'TITLE', 'DESC', 'NOSCRIPT', 'TEXTAREA'].includes(element.tagName.toUpperCase())) continue;
    if (!element.checkVisibility({ visibilityProperty: true, opacityProperty: true })) continue;
    if (element.closest('.unseen, .skip')) continue;
    let turned = false, floats = false, hidden = false;
    const clips = [];
    for (let at = element; at && at !== document.documentElement; at = at.parentElement) {
      const style = getComputedStyle(at);
      turned ||= at.getAttribute('transform')?.includes('rotate') || /matrix\((?!1, 0, 0, 1)/.test(style.transform);
      floats ||= style.position === 'fixed' || style.position === 'sticky';
      if (at !== element.ownerDocument.body && !hidden) {
        const flows = style.overflowX + style.overflowY;
        if (/auto|scroll/.test(flows)) hidden = true;
        else if (/hidden|clip/.test(flows) && (!(at instanceof SVGElement) || at.tagName === 'svg')) clips.push(at);
      }
    }
    if (turned) continue;
    const range = document.createRange();
    range.selectNodeContents(node);
    const boxes = element instanceof SVGElement ? [element.getBoundingClientRect()] : [...range.getClientRects()];
    const words = node.data.trim().slice(0, 40);
    for (const box of boxes) {
      if (box.width < 2 || box.height < 2) continue;
      for (const holder of clips) {
        const hold = holder.getBoundingClientRect();
        const wide = box.right > hold.right + 1.5 || box.left < hold.left - 1.5;
        const high = box.bottom > hold.bottom + box.height / 3 || box.top < hold.top - box.height / 3;
        if (wide || high)
          found.push(`"${words}" is cut off by ${about(holder)}`);
      }
      if (!floats && !hidden) lines.push({ box, element, words });
    }
  }
  lines.sort((a, b) => a.box.top - b.box.top);
  for (let i = 0; i < lines.length; i++) {
    for (let j = i + 1; j < lines.length && lines[j].box.top < lines[i].box.bottom; j++) {
      const a = lines[i], b = lines[j];
      const high = Math.min(a.box.bottom, b.box.bottom) - b.box.top;
      const wide = Math.min(a.box.right, b.box.right) - Math.max(a.box.left, b.box.left);
      if (wide > 3 && high > Math.min(a.box.height, b.box.height) * 0.4)
        found.push(`"${a.words}" (${about(a.element)}) and "${b.words}" (${about(b.element)}) stand on each other`);
    }
  }
  return [...new Set(found)];
}
""";
}
