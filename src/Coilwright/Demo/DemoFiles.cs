using System.Reflection;

namespace Coilwright.Demo;

/// <summary>The invented shop's files, carried inside the program.</summary>
internal static class DemoFiles
{
    /// <summary>Recipe documents by file name.</summary>
    public static IReadOnlyList<(string Name, string Text)> Recipes { get; } = Load("demo/recipes/");

    /// <summary>Winders by file name.</summary>
    public static IReadOnlyList<(string Name, string Text)> Machines { get; } = Load("demo/machines/");

    /// <summary>The player's load.</summary>
    public static string PlayerLoad { get; } = Load("demo/loads/").Single(file => file.Name == "player.json").Text;

    /// <summary>The shop's own rules.</summary>
    public static string Rules { get; } = Load("demo/rules/").Single().Text;

    private static List<(string Name, string Text)> Load(string folder)
    {
        Assembly assembly = typeof(DemoFiles).Assembly;
        return
        [
            .. assembly
                .GetManifestResourceNames()
                .Where(name => name.Replace('\\', '/').StartsWith(folder, StringComparison.Ordinal))
                .Order(StringComparer.Ordinal)
                .Select(name => (name[folder.Length..], Read(assembly, name))),
        ];
    }

    private static string Read(Assembly assembly, string name)
    {
        using StreamReader reader = new(assembly.GetManifestResourceStream(name)!);
        return reader.ReadToEnd();
    }
}
