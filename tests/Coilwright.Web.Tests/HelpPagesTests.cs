using System.Net;
using System.Text.RegularExpressions;
using Coilwright.Papers.Help;
using Coilwright.Web.Views.Help;

namespace Coilwright.Web.Tests;

/// <summary>Each page's question mark opens a part of help that is there, and help is served with nothing from outside.</summary>
public sealed partial class HelpPagesTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public void Every_page_says_its_name_and_has_a_target_that_exists()
    {
        string[] pages =
        [
            .. PagesOnDisk().Where(page => page.Text.Contains("<Shell ", StringComparison.Ordinal)).Select(page => page.Name),
        ];
        Assert.True(pages.Length > 35, $"only {pages.Length} pages");
        Assert.Equal(pages.Order(StringComparer.Ordinal), HelpTable.All.Keys.Order(StringComparer.Ordinal));
        Assert.All(PagesOnDisk().Where(page => pages.Contains(page.Name)), page =>
            Assert.Contains($" Help=\"@nameof({page.Name})\"", page.Text, StringComparison.Ordinal)
        );
        Assert.All(HelpTable.All, entry => Assert.True(Exists(entry.Value), $"{entry.Key}: {entry.Value}"));
        Assert.False(Exists(("page-by-page", "no-such-line")));
        Assert.Equal(HelpTable.Everything, HelpTable.AddressOf("NoSuchPage"));
    }

    [Fact]
    public async Task Help_is_served_by_the_program_itself_and_names_no_address_to_fetch()
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        string list = await shop.Client.GetStringAsync(new Uri("/help", UriKind.Relative), Cancel);
        foreach (HelpPage page in HelpLibrary.All)
        {
            Assert.Contains($"href=\"{page.Address}\"", list, StringComparison.Ordinal);
            string html = await shop.Client.GetStringAsync(new Uri(page.Address, UriKind.Relative), Cancel);
            Assert.Contains("<article class=\"help\"><h1 id=", html, StringComparison.Ordinal);
            Assert.DoesNotContain(Fetched().Matches(html).Select(match => match.Groups[1].Value), address => IsOutside(address));
        }

        string found = await shop.Client.GetStringAsync(new Uri("/help?q=golden+piece", UriKind.Relative), Cancel);
        Assert.Contains("href=\"/help/glossary#golden-piece\"", found, StringComparison.Ordinal);
        string today = await shop.Client.GetStringAsync(new Uri("/", UriKind.Relative), Cancel);
        Assert.Contains("class=\"help-mark\" href=\"/help/page-by-page#today\"", today, StringComparison.Ordinal);
        using HttpResponseMessage none = await shop.Client.GetAsync(new Uri("/help/no-such-guide", UriKind.Relative), Cancel);
        Assert.Equal(HttpStatusCode.NotFound, none.StatusCode);
    }

    [Fact]
    public async Task Where_a_number_comes_from_its_source_opens_its_line()
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        string json = await File.ReadAllTextAsync(Path.Combine(Root(), "demo", "recipes", "harbour-bridge.json"), Cancel);
        Guid id = Guid.NewGuid();
        Assert.Empty((await shop.Services.Recipes.SaveAsync(id, json, "", "Joss", 0, Cancel)).Problems);

        string numbers = await shop.Client.GetStringAsync(new Uri($"/recipes/{id}?view=numbers", UriKind.Relative), Cancel);

        Assert.Contains("href=\"/help/sources#iec60028\"", numbers, StringComparison.Ordinal);
        string[] opened = [.. Source().Matches(numbers).Select(match => match.Groups[1].Value).Distinct()];
        Assert.Equal(["iec60028", "neumann"], opened.Order(StringComparer.Ordinal));
        Assert.All(opened, anchor => Assert.True(Exists(("sources", anchor)), anchor));
    }

    [Theory]
    [InlineData("https://example.org/", true)]
    [InlineData("//example.org/", true)]
    [InlineData("mailto:a@b", true)]
    [InlineData("/help/theory#the-circuit", false)]
    [InlineData("#today", false)]
    [InlineData("data:,", false)]
    public void An_address_outside_is_known(string address, bool outside) => Assert.Equal(outside, IsOutside(address));

    private static bool IsOutside(string address) =>
        address != "data:,"
        && (!(address.StartsWith('/') || address.StartsWith('#')) || address.StartsWith("//", StringComparison.Ordinal));

    private static bool Exists((string Page, string Anchor) target) =>
        HelpLibrary.Find(target.Page) is { } page
        && (target.Anchor.Length == 0 || HelpHtmlWriter.Render(page).Contains($" id=\"{target.Anchor}\"", StringComparison.Ordinal));

    private static IEnumerable<(string Name, string Text)> PagesOnDisk() =>
        Directory
            .EnumerateFiles(Path.Combine(Root(), "src", "Coilwright.Web", "Pages"), "*.razor", SearchOption.AllDirectories)
            .Where(path => !path.EndsWith("_Imports.razor", StringComparison.Ordinal))
            .Select(path => (Path.GetFileNameWithoutExtension(path), File.ReadAllText(path)));

    private static string Root()
    {
        DirectoryInfo folder = new(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "Coilwright.slnx")))
        {
            folder = folder.Parent!;
        }

        return folder.FullName;
    }

    [GeneratedRegex("href=\"/help/sources#([^\"]*)\"")]
    private static partial Regex Source();

    [GeneratedRegex("(?:href|src|action)=\"([^\"]*)\"")]
    private static partial Regex Fetched();
}
