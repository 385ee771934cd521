using System.Text.Json.Nodes;

namespace Coilwright.Browser.Tests.Ground;

/// <summary>Recipes of the invented shop.</summary>
internal static class Demo
{
    /// <summary>One coil, 8,000 turns, 6.18 kΩ at 20 °C ±4 %.</summary>
    public const string TallSingleCoil = "harbour-bridge.json";

    public static string Root
    {
        get
        {
            DirectoryInfo? folder = new(AppContext.BaseDirectory);
            while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Coilwright.slnx")))
            {
                folder = folder.Parent;
            }

            return folder?.FullName ?? throw new DirectoryNotFoundException("the folder of Coilwright.slnx");
        }
    }

    public static string Recipe(string file) => Path.Combine(Root, "demo", "recipes", file);

    public static string FirstCoilOf(string file) => JsonNode.Parse(File.ReadAllText(Recipe(file)))!["coils"]![0]!["name"]!.ToString();
}
