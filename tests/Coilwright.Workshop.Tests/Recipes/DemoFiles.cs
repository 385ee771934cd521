namespace Coilwright.Workshop.Tests.Recipes;

/// <summary>The demo documents and the usual loads as they lie in the repository.</summary>
public static class DemoFiles
{
    private static readonly string s_loads = Path.Combine("src", "Coilwright.Workshop", "Recipes", "Circuits", "Loads");

    public static string Root { get; } = FindRoot();

    public static TheoryData<string> Recipes() => [.. Names(Path.Combine("demo", "recipes"))];

    public static TheoryData<string> Loads() => [.. Names(s_loads)];

    public static string Recipe(string name) => File.ReadAllText(Path.Combine(Root, "demo", "recipes", name + ".json"));

    public static string Load(string name) => File.ReadAllText(Path.Combine(Root, s_loads, name + ".json"));

    private static IEnumerable<string> Names(string folder) =>
        Directory
            .GetFiles(Path.Combine(Root, folder), "*.json")
            .Select(path => Path.GetFileNameWithoutExtension(path))
            .Order(StringComparer.Ordinal);

    private static string FindRoot()
    {
        string? folder = AppContext.BaseDirectory;
        while (folder is not null && !File.Exists(Path.Combine(folder, "Coilwright.slnx")))
        {
            folder = Path.GetDirectoryName(folder);
        }

        return folder ?? throw new InvalidOperationException("The tests do not run inside the repository.");
    }
}
