using System.Text.Json;
using Microsoft.Playwright;

namespace Coilwright.Browser.Tests.Checks;

/// <summary>What must hold of every page as it stands in its window; each check gives what breaks it, in words that find it.</summary>
internal static class PageChecks
{
    private static readonly string s_axe = File.ReadAllText(
        Path.Combine(Ground.Demo.Root, "src", "Coilwright.Web", "client", "node_modules", "axe-core", "axe.min.js")
    );

    /// <summary>Wider than its window.</summary>
    public static Task<string[]> SidewaysAsync(IPage page) =>
        page.EvaluateAsync<string[]>(
            """
            () => {
              const wide = document.documentElement.scrollWidth;
              return wide > innerWidth ? [`${wide} wide in ${innerWidth}`] : [];
            }
            """
        );

    /// <summary>Text that is cut off, or that another text stands on.</summary>
    public static Task<string[]> CrowdedAsync(IPage page) => page.EvaluateAsync<string[]>(CrowdedText.Script);

    /// <summary>Things to touch that are lower than 44 px; links within a line of text are not meant.</summary>
    public static Task<string[]> SmallAsync(IPage page) =>
        page.EvaluateAsync<string[]>(
            """
            () => [...document.querySelectorAll('button, .button, nav a, select, textarea, summary, input:not([type=hidden])')]
              .map(one => /checkbox|radio/.test(one.type) ? one.closest('label') ?? one : one)
              .filter(one => one.checkVisibility({ visibilityProperty: true }) && !one.closest('.unseen'))
              .filter(one => one.getBoundingClientRect().height < 43.5)
              .map(one => `${one.tagName.toLowerCase()} "${(one.textContent || one.id).trim().slice(0, 40)}" is `
                + `${one.getBoundingClientRect().height.toFixed(0)} px high`)
            """
        );

    /// <summary>More than one copper button in sight.</summary>
    public static Task<string[]> MainActionsAsync(IPage page) =>
        page.EvaluateAsync<string[]>(
            """
            () => {
              const probe = document.createElement('button');
              document.body.append(probe);
              const copper = getComputedStyle(probe).backgroundColor;
              probe.remove();
              const main = [...document.querySelectorAll('main button, main .button')].filter(one =>
                one.checkVisibility({ visibilityProperty: true }) && !one.closest('.unseen')
                && getComputedStyle(one).backgroundColor === copper);
              return main.length > 1 ? [`${main.length} main actions: ${main.map(one => one.textContent.trim()).join(' | ')}`] : [];
            }
            """
        );

    /// <summary>Keys of files, and words of programs, in what is read or stands in fields.</summary>
    public static Task<string[]> WordsOfProgramsAsync(IPage page) =>
        page.EvaluateAsync<string[]>(
            """
            () => {
              const fields = [...document.querySelectorAll('input:not([type=hidden], [type=checkbox], [type=radio]), textarea')]
                .filter(one => one.checkVisibility()).flatMap(one => [one.value, one.placeholder]);
              const paths = [...document.querySelectorAll('code.path')]; // files of this computer are called as they are called
              paths.forEach(one => one.hidden = true);
              const read = [document.body.innerText, ...fields].join('\n');
              paths.forEach(one => one.hidden = false);
              const words = /\bundefined\b|\bNaN\b|\bnull\b|\[object|\{"|coilwright\.\w+\/|\b[a-z]{2,}[A-Z]\w*|\w+\[\d+\]/g;
              return [...new Set(read.match(words))];
            }
            """
        );

    /// <summary>Rules of accessibility by axe-core; contrast is measured apart, in all three lights.</summary>
    public static async Task<string[]> BarriersAsync(IPage page)
    {
        await page.EvaluateAsync(s_axe);
        JsonElement? found = await page.EvaluateAsync(
            """
            async () => (await axe.run(document, {
              rules: {
                'color-contrast': { enabled: false },
                'label-content-name-mismatch': { enabled: true },
                'target-size': { enabled: true },
              },
              resultTypes: ['violations'],
            })).violations.flatMap(rule => rule.nodes.map(node => `${rule.id}: ${node.target} ${node.html.slice(0, 160)}`))
            """
        );
        return found!.Value.Deserialize<string[]>()!;
    }

    /// <summary>Texts that hardly stand out from what is behind them: dark, light and on paper, all unfolded.</summary>
    public static async Task<string[]> FaintAsync(IPage page)
    {
        await page.EvaluateAsync("() => document.querySelectorAll('details').forEach(part => part.open = true)");
        List<string> faint = [];
        foreach ((ColorScheme scheme, Media media) in s_lights)
        {
            await page.EmulateMediaAsync(new() { ColorScheme = scheme, Media = media });
            faint.AddRange((await FaintText.OfAsync(page)).Select(text => $"{scheme} {media}: {text}"));
        }

        await page.EmulateMediaAsync(new() { ColorScheme = ColorScheme.Light, Media = Media.Screen });
        return [.. faint];
    }

    /// <summary>Figures in sight with neither a picture nor a word in them.</summary>
    public static Task<string[]> EmptyFiguresAsync(IPage page) =>
        page.EvaluateAsync<string[]>(
            """
            () => [...document.querySelectorAll('figure')]
              .filter(one => one.checkVisibility() && !one.querySelector('svg, img, table'))
              .map(one => `figure "${one.textContent.trim().slice(0, 40)}" has no picture`)
            """
        );

    /// <summary>A page of the day, or a view of a recipe, that is longer than this.</summary>
    public static Task<string[]> TooLongAsync(IPage page, int longestPx) =>
        page.EvaluateAsync<string[]>(
            """
            longest => {
              const daily = /^\/(recipes\/[0-9a-f-]{36}|batches\/[0-9a-f-]{36}(\/enter|\/wind)?|clocks|test|pieces)?$/
                .test(location.pathname);
              const long = document.documentElement.scrollHeight;
              return daily && !location.search.includes('all=') && long > longest ? [`${long} px long`] : [];
            }
            """,
            longestPx
        );

    /// <summary>What the tab key never reaches, or reaches without showing it.</summary>
    public static async Task<string[]> OutOfReachAsync(IPage page)
    {
        int count = await page.EvaluateAsync<int>(KeyboardReach.Mark);
        for (int at = 0; at < count; at++)
        {
            await page.Keyboard.PressAsync("Tab");
            await page.EvaluateAsync(KeyboardReach.Note);
        }

        return await page.EvaluateAsync<string[]>(KeyboardReach.Missed);
    }

    private static readonly (ColorScheme, Media)[] s_lights =
    [
        (ColorScheme.Dark, Media.Screen),
        (ColorScheme.Light, Media.Screen),
        (ColorScheme.Dark, Media.Print),
    ];
}
