using Microsoft.Playwright;

namespace Coilwright.Browser.Tests.Checks;

/// <summary>What must hold of a page that is on screen, at the width of a phone, a tablet and a laptop.</summary>
internal static class EveryWidth
{
    public static async Task HoldsAsync(IPage page)
    {
        List<string> broken = [];
        foreach ((int width, int height) in ((int, int)[])[(390, 844), (810, 1080), (1280, 800)])
        {
            await page.SetViewportSizeAsync(width, height);
            string[][] found =
            [
                await PageChecks.SidewaysAsync(page),
                await PageChecks.CrowdedAsync(page),
                await PageChecks.SmallAsync(page),
                await PageChecks.MainActionsAsync(page),
                await PageChecks.WordsOfProgramsAsync(page),
                await PageChecks.BarriersAsync(page),
            ];
            broken.AddRange(found.SelectMany(some => some).Select(what => $"{page.Url} at {width}: {what}"));
        }

        Assert.True(broken.Count == 0, string.Join('\n', broken));
    }
}
