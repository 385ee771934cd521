using System.Reflection;
using System.Text.Json;
using Coilwright.Physics.Circuit;

namespace Coilwright.Workshop.Recipes.Circuits;

/// <summary>A small set of loads with generic names; they travel inside the program.</summary>
/// <param name="Key">What forms send for it: the name of its file.</param>
/// <param name="Name">Its name.</param>
/// <param name="Load">The parts.</param>
public sealed record UsualLoad(string Key, string Name, LoadCircuit Load)
{
    /// <summary>A usual player's: volume and tone full up, a cable, an input.</summary>
    public static UsualLoad Player { get; } = Read("loads/player.json");

    /// <summary>All of them, by name.</summary>
    public static IReadOnlyList<UsualLoad> All { get; } = [.. Names().Select(Read).OrderBy(load => load.Name, StringComparer.Ordinal)];

    private static IEnumerable<string> Names() =>
        Assembly.GetExecutingAssembly().GetManifestResourceNames().Where(name => name.StartsWith("loads/", StringComparison.Ordinal));

    private static UsualLoad Read(string resource)
    {
        using Stream stream = Assembly.GetExecutingAssembly().GetManifestResourceStream(resource)!;
        using StreamReader reader = new(stream);
        string json = reader.ReadToEnd();
        using JsonDocument document = JsonDocument.Parse(json);
        return new UsualLoad(
            Path.GetFileNameWithoutExtension(resource),
            document.RootElement.GetProperty("name").GetString()!,
            LoadReader.Read(json).Value ?? throw new InvalidOperationException($"The load {resource} does not read.")
        );
    }
}
