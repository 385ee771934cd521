using System.Text.RegularExpressions;
using BenchmarkDotNet.Attributes;
using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Engines;
using BenchmarkDotNet.Jobs;
using BenchmarkDotNet.Toolchains.InProcess.Emit;
using Microsoft.Playwright;

namespace Coilwright.Benchmarks;

/// <summary>
/// Pages of the demo shop in a browser whose processor is slowed four times, as on a tablet: from the movement of a slider to redrawn
/// numbers, and from opening a recipe to its answers; against the server's bare answer fetched by the same page in the same run.
/// </summary>
[Config(typeof(InThisProcess))]
public class SliderBenchmarks
{
    /// <summary>How many times slower the page's processor is made.</summary>
    private const int Slowed = 4;

    private const string Move = """
        async () => {
          const slider = document.querySelector('input[type=range][data-drives*="turns"]');
          const answers = document.querySelector('[data-part=answers]');
          const drawn = new Promise(done =>
            new MutationObserver((_, self) => { self.disconnect(); done(); }).observe(answers, { childList: true }));
          window.moved = ((window.moved ?? 0) + 1) % 40;
          slider.value = String(6000 + 50 * window.moved);
          slider.dispatchEvent(new Event('input', { bubbles: true }));
          await drawn;
        }
        """;

    private readonly BenchmarkShop _shop = new();
    private IPlaywright? _playwright;
    private IBrowser? _browser;
    private IPage _single = null!,
        _twin = null!,
        _opened = null!;
    private string _recipe = "";

    [GlobalSetup]
    public async Task Setup()
    {
        await _shop.StartAsync();
        _playwright = await Playwright.CreateAsync();
        string[] known = ["/usr/bin/chromium-headless-shell", "/usr/bin/chromium"];
        _browser = await _playwright.Chromium.LaunchAsync(
            new() { ExecutablePath = known.First(File.Exists), Args = ["--no-sandbox", "--disable-gpu"] }
        );
        string list = await _shop.Client.GetStringAsync(new Uri("/recipes", UriKind.Relative));
        _recipe = AddressOf(list, "Harbour bridge");
        _single = await PageAsync(_recipe);
        _twin = await PageAsync(AddressOf(list, "Breakwater twin"));
        _opened = await PageAsync("/");
    }

    [GlobalCleanup]
    public async Task Cleanup()
    {
        await _browser!.DisposeAsync();
        _playwright!.Dispose();
        await _shop.DisposeAsync();
    }

    [Benchmark(Baseline = true)]
    public Task Health() => _single.EvaluateAsync("async () => { await (await fetch('/api/health')).text(); }");

    [Benchmark]
    public Task SingleCoil() => _single.EvaluateAsync(Move);

    [Benchmark]
    public Task TwoCoils() => _twin.EvaluateAsync(Move);

    [Benchmark]
    public async Task FirstReading()
    {
        await _opened.GotoAsync(_recipe, new() { WaitUntil = WaitUntilState.Commit });
        await _opened.Locator("[data-part=answers] li").First.WaitForAsync();
    }

    private async Task<IPage> PageAsync(string address)
    {
        IPage page = await _browser!.NewPageAsync(new() { BaseURL = _shop.Client.BaseAddress!.ToString() });
        ICDPSession session = await page.Context.NewCDPSessionAsync(page);
        await session.SendAsync("Emulation.setCPUThrottlingRate", new() { ["rate"] = Slowed });
        await page.GotoAsync(address, new() { WaitUntil = WaitUntilState.NetworkIdle });
        return page;
    }

    private static string AddressOf(string list, string name) =>
        Regex.Match(list, $"href=\"(/recipes/[0-9a-f-]{{36}})\"[^>]*>[^<]*{name}") is { Success: true } found
            ? found.Groups[1].Value
            : throw new InvalidOperationException($"The demo shop has no recipe {name}.");

    /// <summary>The browser's driver lies beside this program; each movement is one measurement.</summary>
    private sealed class InThisProcess : ManualConfig
    {
        public InThisProcess() =>
            AddJob(
                Job.Default.WithToolchain(InProcessEmitToolchain.Instance)
                    .WithStrategy(RunStrategy.Monitoring)
                    .WithWarmupCount(5)
                    .WithIterationCount(40)
            );
    }
}
