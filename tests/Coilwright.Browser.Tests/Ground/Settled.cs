using Microsoft.Playwright;

namespace Coilwright.Browser.Tests.Ground;

/// <summary>Opening a page that may look again by itself.</summary>
internal static class Settled
{
    /// <summary>
    /// Lets a page tell whether it still waits for an answer that it asked for by itself. An answer counts until the page has had time to
    /// ask on because of it.
    /// </summary>
    public const string CountsQuestions = """
        (() => {
          let underWay = 0;
          const ask = window.fetch;
          window.stillAsking = () => underWay > 0;
          window.fetch = (...asked) => {
            underWay++;
            const answer = ask(...asked);
            answer.then(one => one.clone().text()).catch(() => {}).then(async () => {
              for (let turn = 0; turn < 100; turn++) await null;
              underWay--;
            });
            return answer;
          };
        })()
        """;

    private static readonly TimeSpan s_look = TimeSpan.FromMilliseconds(25);

    /// <summary>
    /// Opens a page and waits for it to be done. A page of a search under way looks again by itself, which would break off
    /// the way to the next page and show the test an answer half made.
    /// </summary>
    public static async Task OpenAsync(this IPage page, string address)
    {
        await page.GotoAsync(address);
        await Assertions.Expect(page.Locator("meta[http-equiv=refresh]")).ToHaveCountAsync(0, new() { Timeout = 60_000 });
        while (await page.EvaluateAsync<bool>("() => Boolean(window.stillAsking?.())"))
        {
            await Task.Delay(s_look);
        }

        await Assertions.Expect(page.Locator("[aria-busy=true]")).ToHaveCountAsync(0, new() { Timeout = 60_000 }); // dimmed while it works
    }
}
