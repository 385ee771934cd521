using Microsoft.Playwright;

namespace Coilwright.Browser.Tests.Checks;

/// <summary>Contrast of every text of a page against what lies behind it, by the relative luminance of WCAG 2.</summary>
internal static class FaintText
{
    /// <summary>
    /// Texts with less than 4.5 : 1, also examples in empty fields; each with its ratio and colours. Pictures behind a text are not looked
    /// at.
    /// </summary>
    public static async Task<string[]> OfAsync(IPage page) => await page.EvaluateAsync<string[]>(Script);

    private const string Script = """
() => {
  const parse = text => {
    const m = text.match(/rgba?\(([^)]+)\)/);
    if (m) {
      const p = m[1].split(/[ ,/]+/).filter(x => x).map(Number);
      return [p[0], p[1], p[2], p.length > 3 ? p[3] : 1];
    }
    const s = text.match(/color\(srgb ([\d. ]+)(?:\/ ([\d.]+))?\)/);
    if (!s) return null;
    const [r, g, b] = s[1].trim().split(/ +/).map(Number);
    return [r * 255, g * 255, b * 255, s[2] === undefined ? 1 : Number(s[2])];
  };
  const over = (top, under) => [0, 1, 2].map(i => top[i] * top[3] + under[i] * (1 - top[3])).concat(1);
  const linear = v => (v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4);
  const light = c => 0.2126 * linear(c[0] / 255) + 0.7152 * linear(c[1] / 255) + 0.0722 * linear(c[2] / 255);
  const white = [255, 255, 255, 1];
  const canvas = matchMedia('print').matches ? white : parse(getComputedStyle(document.body).backgroundColor) ?? white;
  const backing = element => {
    const stack = [];
    for (let at = element; at; at = at.parentElement) {
      const back = parse(getComputedStyle(at).backgroundColor);
      if (back && back[3] > 0) {
        stack.push(back);
        if (back[3] === 1) break;
      }
    }
    return stack.reverse().reduce((under, top) => over(top, under), canvas[3] > 0 ? canvas : white);
  };
  const alpha = element => {
    let all = 1;
    for (let at = element; at; at = at.parentElement) all *= Number(getComputedStyle(at).opacity);
    return all;
  };
  const faint = new Map();
  const tell = (element, colour, own, words) => {
    const back = backing(element);
    const ink = over([colour[0], colour[1], colour[2], colour[3] * own * alpha(element)], back);
    const [a, b] = [light(ink), light(back)].sort((x, y) => y - x);
    const ratio = (a + 0.05) / (b + 0.05);
    if (ratio >= 4.5) return;
    const rgb = colour => `rgb(${colour.slice(0, 3).map(Math.round)})`;
    const key = `${element.tagName.toLowerCase()}.${element.getAttribute('class') ?? ''} ${rgb(ink)} on ${rgb(back)}`;
    if (!faint.has(key)) faint.set(key, `${ratio.toFixed(2)} ${key}: ${words.slice(0, 40)}`);
  };
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  for (let node = walker.nextNode(); node; node = walker.nextNode()) {
    const element = node.parentElement;
    if (!node.data.trim() || !element || ['SCRIPT', 'STYLE', 'OPTION', 'TITLE', 'DESC'].includes(element.tagName.toUpperCase())) continue;
    if (!element.checkVisibility({ visibilityProperty: true, opacityProperty: true })) continue;
    if (element.closest('button:disabled, [aria-hidden=true], .unseen, .skip')) continue;
    const style = getComputedStyle(element), isSvg = element instanceof SVGElement;
    const colour = parse(isSvg ? style.fill : style.color);
    if (!colour) continue;
    tell(element, colour, 1, node.data.trim());
  }
  for (const field of matchMedia('print').matches ? [] : document.querySelectorAll('input:placeholder-shown, textarea:placeholder-shown')) {
    const colour = parse(getComputedStyle(field, '::placeholder').color);
    if (!colour || !field.checkVisibility({ visibilityProperty: true })) continue;
    tell(field, colour, getComputedStyle(field, '::placeholder').opacity, field.placeholder);
  }
  return [...faint.values()];
}
""";
}
