using Coilwright.Browser.Tests.Checks;
using Coilwright.Browser.Tests.Ground;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Coilwright.Browser.Tests;

/// <summary>Designs heard one against the other in the browser, and a blind test of them.</summary>
public sealed class ListenPageTests(Chromium chromium)
{
    /// <summary>Notes every gain that the page makes, and every straight change of one with its length in seconds.</summary>
    private const string NotesGains = """
        window.gains = [];
        window.ramps = [];
        const make = AudioContext.prototype.createGain;
        AudioContext.prototype.createGain = function () {
          const node = make.call(this);
          window.gains.push(node.gain);
          return node;
        };
        const ramp = AudioParam.prototype.linearRampToValueAtTime;
        const hold = AudioParam.prototype.setValueAtTime;
        AudioParam.prototype.setValueAtTime = function (value, time) {
          this.held = { value, time, was: this.value };
          return hold.call(this, value, time);
        };
        AudioParam.prototype.linearRampToValueAtTime = function (value, time) {
          const { value: from, time: start, was } = this.held;
          window.ramps.push({ from, jump: Math.abs(from - was), to: value, length: time - start });
          return ramp.call(this, value, time);
        };
        """;

    private sealed record Ramp(double From, double Jump, double To, double Length);

    [Fact]
    public async Task Sounds_run_in_one_clock_and_are_turned_by_button_and_key_without_a_step()
    {
        await using ServedShop shop = await StockedAsync();
        IPage page = await chromium.PageAsync(shop.Url);
        await page.AddInitScriptAsync(NotesGains);
        await page.GotoAsync("/listen");
        ILocator said = page.GetByRole(AriaRole.Status);
        await Expect(said).ToHaveTextAsync("Nothing sounds.");
        await page.GetByRole(AriaRole.Button, new() { Name = "Play", Exact = true }).ClickAsync();
        await Expect(said).ToContainTextAsync("You hear A: Harbour bridge A");
        await HearsAsync(page, 1, 0);
        await page.GetByRole(AriaRole.Button, new() { Name = "B: " }).ClickAsync();
        await Expect(said).ToContainTextAsync("You hear B: Sandbar wide A");
        await HearsAsync(page, 0, 1);
        await page.Keyboard.PressAsync("a");
        await Expect(said).ToContainTextAsync("You hear A: ");
        await HearsAsync(page, 1, 0);
        double[][] noted = await page.EvaluateAsync<double[][]>("() => window.ramps.map(one => [one.from, one.jump, one.to, one.length])");
        Ramp[] ramps = [.. noted.Select(one => new Ramp(one[0], one[1], one[2], one[3]))];
        Assert.Equal(6, ramps.Length);
        Assert.All(ramps, ramp => Assert.InRange(ramp.Length, 0.0208, 0.03)); // 1,000 samples of 48,000 a second: no step over −60 dB
        Assert.All(ramps, ramp => Assert.InRange(ramp.Jump, 0, 1e-6));
        Assert.Equal([0, 0, 1, 0, 0, 1], ramps.Select(ramp => Math.Round(ramp.From, 3)));
        await page.Keyboard.PressAsync("p");
        await Expect(said).ToHaveTextAsync("Nothing sounds.");
        await HearsAsync(page, 0, 0);
    }

    [Fact]
    public async Task The_pages_hold_what_every_page_holds_and_a_test_runs_to_its_verdict()
    {
        await using ServedShop shop = await StockedAsync();
        IPage page = await chromium.PageAsync(shop.Url, 390, 844);
        foreach (string address in (string[])["/listen", "/listen/blind"])
        {
            await page.GotoAsync(address);
            await EveryWidth.HoldsAsync(page);
        }

        await page.GetByLabel("Rounds").SelectOptionAsync("10");
        await page.GetByRole(AriaRole.Button, new() { Name = "Begin the test" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToContainTextAsync("Round 1 of 10");
        await EveryWidth.HoldsAsync(page);
        await page.Keyboard.PressAsync("x");
        await Expect(page.GetByRole(AriaRole.Status)).ToHaveTextAsync("You hear X: one of the two");
        for (int round = 1; round <= 10; round++)
        {
            await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToContainTextAsync($"Round {round} of 10");
            await page.GetByRole(AriaRole.Button, new() { Name = "X is A" }).ClickAsync();
        }

        await Expect(page.GetByRole(AriaRole.Status)).ToContainTextAsync("of 10 right");
        await EveryWidth.HoldsAsync(page);
    }

    [Fact]
    public async Task Without_scripts_each_sound_has_the_browser_s_own_controls()
    {
        await using ServedShop shop = await StockedAsync();
        IPage page = await chromium.PageAsync(shop.Url, scripts: false);
        await page.GotoAsync("/listen");
        await Expect(page.Locator("audio")).ToHaveCountAsync(2);
        await Expect(page.Locator("audio").First).ToBeVisibleAsync();
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "Play", Exact = true })).ToBeHiddenAsync();
        await page.GetByText("What is played and heard, and the files").ClickAsync();
        await Expect(page.GetByRole(AriaRole.Link, new() { Name = "Download A (WAV)" })).ToBeVisibleAsync();
    }

    private static async Task<ServedShop> StockedAsync()
    {
        ServedShop shop = await ServedShop.StartAsync();
        await shop.ReleasedRecipeAsync();
        await shop.ReleasedRecipeAsync("sandbar-wide.json");
        return shop;
    }

    private static async Task HearsAsync(IPage page, double a, double b) =>
        await page.WaitForFunctionAsync(
            "([a, b]) => Math.abs(window.gains[0].value - a) < 1e-3 && Math.abs(window.gains[1].value - b) < 1e-3",
            new[] { a, b }
        );
}
