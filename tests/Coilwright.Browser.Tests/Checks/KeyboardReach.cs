namespace Coilwright.Browser.Tests.Checks;

/// <summary>Scripts that follow the tab key through a page.</summary>
internal static class KeyboardReach
{
    /// <summary>Marks what can be worked with, and gives how often the key must be pressed to pass it all.</summary>
    public const string Mark = """
        () => {
          document.activeElement?.blur();
          const all = [...document.querySelectorAll('a[href], button, input:not([type=hidden]), select, textarea, summary, [tabindex="0"]')]
            .filter(one => !one.disabled && one.checkVisibility({ visibilityProperty: true }))
            .filter(one => !(one.tabIndex < 0 && one.ariaHidden === 'true')); // only says which button the Enter key means
          const named = all.filter(one => one.type === 'radio');
          // one of a group of radio buttons is reached by the key, the others by the arrows
          const groups = new Set(named.map(one => `${one.form?.id ?? [...document.forms].indexOf(one.form)} ${one.name}`));
          window.toReach = all.filter(one => one.type !== 'radio');
          window.reached = new Set();
          window.unshown = new Set();
          return window.toReach.length + groups.size + 2;
        }
        """;

    /// <summary>Notes where the key has led, and whether it can be seen there.</summary>
    public const string Note = """
        () => {
          const at = document.activeElement;
          if (!at || at === document.body) return;
          window.reached.add(at);
          const style = getComputedStyle(at);
          if (style.outlineStyle === 'none' && style.boxShadow === 'none') window.unshown.add(at);
        }
        """;

    /// <summary>What was not reached or not shown.</summary>
    public const string Missed = """
        () => {
          const named = one => `${one.tagName.toLowerCase()} "${(one.textContent || one.id || one.name).trim().slice(0, 40)}"`;
          return [
            ...window.toReach.filter(one => !window.reached.has(one)).map(one => `${named(one)} is not reached`),
            ...[...window.unshown].map(one => `${named(one)} does not show that it is reached`),
          ];
        }
        """;
}
