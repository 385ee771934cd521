using Microsoft.Playwright;

namespace Coilwright.Browser.Tests.Ground;

/// <summary>Leaving a page by a button or a link, and waiting for the one that takes its place.</summary>
internal static class Sent
{
    private static readonly TimeSpan s_look = TimeSpan.FromMilliseconds(25);

    /// <summary>
    /// Presses a button with the keyboard and waits until the page that answers stands in place of the one it was pressed on.
    /// Without the wait, what is typed next can fall into the page that is about to go, and a reload can meet one half made.
    /// </summary>
    public static Task SendAsync(this IPage page, string button) =>
        LeaveAsync(page, () => page.GetByRole(AriaRole.Button, new() { Name = button }).PressAsync("Enter"));

    /// <summary>Follows a link, and waits likewise.</summary>
    public static Task FollowAsync(this IPage page, string link) =>
        LeaveAsync(page, () => page.GetByRole(AriaRole.Link, new() { Name = link, Exact = true }).First.ClickAsync());

    /// <summary>
    /// Looks at the new page itself: the driver's own wait for the event can miss one that came before it began to wait.
    /// </summary>
    private static async Task LeaveAsync(IPage page, Func<Task> leave)
    {
        await page.EvaluateAsync("() => { document.documentElement.dataset.pressedOn = 'yes'; }");
        await leave();
        await Assertions.Expect(page.Locator("html[data-pressed-on]")).ToHaveCountAsync(0);
        while (await page.EvaluateAsync<string>("() => document.readyState") != "complete")
        {
            await Task.Delay(s_look);
        }
    }
}
