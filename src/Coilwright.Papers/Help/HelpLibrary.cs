using System.Reflection;

namespace Coilwright.Papers.Help;

/// <summary>The guides, the words, the sources and what rests on them, carried inside the program.</summary>
public static class HelpLibrary
{
    private static readonly string[] s_guides =
    [
        "page-by-page",
        "an-empty-shop",
        "first-hour",
        "first-hour-at-the-winder",
        "when-a-coil-is-off",
        "hotter-but-keep-the-top-end",
        "listen-before-you-wind",
        "do-i-really-hear-it",
        "what-to-buy",
        "can-i-promise-this",
        "what-my-readings-taught-it",
        "measuring-impedance",
        "hook-up-a-meter",
        "an-old-winder-counts",
        "assembly-day",
        "a-pickup-comes-back",
        "bring-in-old-notes",
        "who-may-see-what",
        "backup-in-two-minutes",
        "take-everything-out",
        "move-to-postgresql",
        "when-the-disk-is-full",
    ];

    private static readonly string[] s_behind = ["glossary", "sources", "theory", "evidence"];

    /// <summary>Jobs from the bench, in the order of the work.</summary>
    public static IReadOnlyList<HelpPage> Guides { get; } = [.. s_guides.Select(Load)];

    /// <summary>What words mean, and what the numbers rest on.</summary>
    public static IReadOnlyList<HelpPage> Behind { get; } = [.. s_behind.Select(Load)];

    /// <summary>All of them.</summary>
    public static IReadOnlyList<HelpPage> All { get; } = [.. Guides, .. Behind];

    /// <summary>A page by its name; null where there is none.</summary>
    public static HelpPage? Find(string name) => All.FirstOrDefault(page => page.Name == name);

    private static HelpPage Load(string name)
    {
        using Stream stream = Assembly.GetExecutingAssembly().GetManifestResourceStream($"help/{name}.md")
            ?? throw new InvalidOperationException($"The help page {name} is missing from the program: build it again.");
        using StreamReader reader = new(stream);
        string text = reader.ReadToEnd().ReplaceLineEndings("\n");
        string title = text.Split('\n')[0].TrimStart('#', ' ');
        return new HelpPage(name, title, text);
    }
}
