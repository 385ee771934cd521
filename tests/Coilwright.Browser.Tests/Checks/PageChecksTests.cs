using Coilwright.Browser.Tests.Ground;
using Microsoft.Playwright;

namespace Coilwright.Browser.Tests.Checks;

/// <summary>Proof that each check of a page fails where it must, and only there.</summary>
public sealed class PageChecksTests(Chromium chromium)
{
    /// <summary>Grey on dark, a half-seen word, an example in an empty field, and a word in a drawing.</summary>
    [Theory]
    [InlineData("<p style='color:#666'>grey</p>", "p.")]
    [InlineData("<p style='opacity:.4'>half</p>", "p.")]
    [InlineData("<p style='background:#777;color:#aaa'>on a tint</p>", "p.")]
    [InlineData(
        "<style>#faint::placeholder{color:#555}</style><input id='faint' style='background:#20262e' placeholder='7.43 k'>",
        "input."
    )]
    [InlineData("<svg width='90' height='30'><text y='20' fill='#555'>drawn</text></svg>", "text.")]
    [InlineData("<p style='color:#eee'>plain</p>", null)]
    public async Task Faint_text_is_found(string html, string? found)
    {
        IPage page = await chromium.PageAsync(new Uri("http://localhost"));
        await page.SetContentAsync($"<body style='background:#171b21;color:#f1ece3'>{html}</body>");
        string[] faint = await FaintText.OfAsync(page);
        Assert.Equal(found is null ? 0 : 1, faint.Length);
        Assert.All(faint, text => Assert.Contains(" " + found, text, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("<main><h1>a</h1><h3>b</h3></main>", "heading-order")]
    [InlineData("<h1>no landmark</h1>", "landmark-one-main")]
    [InlineData("<main><h1>a</h1><button aria-label='other'>this</button></main>", "label-content-name-mismatch")]
    [InlineData("<main><h1>a</h1><input></main>", "label")]
    [InlineData("<main><h1>a</h1><p>as it should be</p></main>", null)]
    public async Task A_broken_rule_is_found(string html, string? rule)
    {
        string[] broken = await PageChecks.BarriersAsync(await PageOfAsync(html));
        Assert.Equal(rule is null ? 0 : 1, broken.Count(one => rule is null || one.StartsWith(rule + ":", StringComparison.Ordinal)));
    }

    [Theory]
    [InlineData("<p style='width:60px;overflow:hidden;white-space:nowrap'>a long line of words</p>", "cut off")]
    [InlineData("<svg width='50' height='20'><text x='20' y='15'>a long line</text></svg>", "cut off")]
    [InlineData("<p>one</p><p style='margin-top:-34px'>two</p>", "stand on each other")]
    [InlineData("<svg width='90' height='30'><text y='20'>one</text><text y='22'>two</text></svg>", "stand on each other")]
    [InlineData("<p style='width:60px;overflow:auto;white-space:nowrap'>a long line of words</p><p>one</p><p>two</p>", null)]
    [InlineData("<p style='width:60px;line-height:1'>a long line of words that wraps</p>", null)]
    public async Task Crowded_text_is_found(string html, string? found) =>
        Expect(found, await PageChecks.CrowdedAsync(await PageOfAsync(html)));

    [Theory]
    [InlineData("<p style='width:1400px'>wide</p>", "1408 wide in 1280")]
    [InlineData("<p>as it should be</p>", null)]
    public async Task A_page_wider_than_its_window_is_found(string html, string? found) =>
        Expect(found, await PageChecks.SidewaysAsync(await PageOfAsync(html)));

    [Theory]
    [InlineData("<button style='height:30px'>low</button>", "30 px high")]
    [InlineData("<label style='display:block;height:20px'><input type=checkbox>low</label>", "20 px high")]
    [InlineData("<button style='height:44px'>high</button><p>a <a href='/'>link</a> in a line</p>", null)]
    public async Task A_target_under_44_px_is_found(string html, string? found) =>
        Expect(found, await PageChecks.SmallAsync(await PageOfAsync(html)));

    [Theory]
    [InlineData("<main><button>one</button><button>two</button></main>", "2 main actions: one | two")]
    [InlineData("<style>.quiet{background:transparent}</style><main><button>one</button><button class=quiet>two</button></main>", null)]
    public async Task A_second_main_action_is_found(string html, string? found) =>
        Expect(found, await PageChecks.MainActionsAsync(await PageOfAsync(html)));

    [Theory]
    [InlineData("<p>undefined</p>", "undefined")]
    [InlineData("<p>about 3 kΩ, NaN</p>", "NaN")]
    [InlineData("<p>dcResistance</p>", "dcResistance")]
    [InlineData("<input value='coils[0]'>", "coils[0]")]
    [InlineData("<p><code class=path>/tmp/shop-aBc/backups</code></p>", null)]
    [InlineData("<p><code class=path>/tmp/shop-aBc/backups</code> dcResistance</p>", "dcResistance")]
    [InlineData("<p>{\"format\": 1}</p>", "{\"")]
    [InlineData("<input type=hidden value='dcResistance'><p>5.2 kHz, mH, H-12, kΩ</p>", null)]
    public async Task A_word_of_programs_is_found(string html, string? found) =>
        Expect(found, await PageChecks.WordsOfProgramsAsync(await PageOfAsync(html)));

    [Theory]
    [InlineData("<figure><div></div></figure>", "has no picture")]
    [InlineData("<figure><svg width='9' height='9'></svg></figure>", null)]
    public async Task An_empty_figure_is_found(string html, string? found) =>
        Expect(found, await PageChecks.EmptyFiguresAsync(await PageOfAsync(html)));

    [Theory]
    [InlineData("<a href='/'>one</a><a href='/' tabindex='-1'>two</a>", "a \"two\" is not reached")]
    [InlineData("<style>a{outline:none}</style><a href='/'>one</a>", "does not show that it is reached")]
    [InlineData("<a href='/'>one</a><input><label><input type=radio name=a>b</label><label><input type=radio name=a>c</label>", null)]
    public async Task What_the_keyboard_does_not_reach_is_found(string html, string? found) =>
        Expect(found, await PageChecks.OutOfReachAsync(await PageOfAsync(html)));

    private static void Expect(string? found, string[] broken)
    {
        Assert.Equal(found is null ? 0 : 1, broken.Length);
        Assert.All(broken, one => Assert.Contains(found!, one, StringComparison.Ordinal));
    }

    private async Task<IPage> PageOfAsync(string html)
    {
        IPage page = await chromium.PageAsync(new Uri("http://localhost"));
        await page.SetContentAsync($"<!doctype html><html lang='en'><head><title>t</title></head><body>{html}</body></html>");
        return page;
    }
}
