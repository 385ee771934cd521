using Microsoft.Playwright;

namespace Coilwright.Browser.Tests.Ground;

/// <summary>Sending a form and waiting for the page that answers.</summary>
internal static class Sent
{
    /// <summary>
    /// Presses a button with the keyboard and waits until the page that answers stands in place of the one it was pressed on.
    /// Without the wait, what is typed next can fall into the page that is about to go, and a reload can meet one half made.
    /// </summary>
    public static async Task SendAsync(this IPage page, string button)
    {
        await page.EvaluateAsync("() => { document.documentElement.dataset.pressedOn = 'yes'; }");
        await page.GetByRole(AriaRole.Button, new() { Name = button }).PressAsync("Enter");
        await Assertions.Expect(page.Locator("html[data-pressed-on]")).ToHaveCountAsync(0);
        await page.WaitForLoadStateAsync(LoadState.Load);
    }
}
