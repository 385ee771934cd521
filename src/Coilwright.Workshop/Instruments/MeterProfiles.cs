using System.Reflection;

namespace Coilwright.Workshop.Instruments;

/// <summary>The profiles that come with the program, by the name that a command takes.</summary>
/// <remarks>
/// What they ask are the measurement instructions of SCPI-1999 (MEASure, READ, FETCh), from memory of the standard, not read; that a
/// bridge answers its first parameter first is common practice, no source.
/// </remarks>
public static class MeterProfiles
{
    private const string Prefix = "meters/";

    private static readonly Lazy<IReadOnlyList<(string Key, MeterProfile Profile)>> s_all = new(() =>
        [
            .. Assembly
                .GetExecutingAssembly()
                .GetManifestResourceNames()
                .Where(name => name.StartsWith(Prefix, StringComparison.Ordinal))
                .Order(StringComparer.Ordinal)
                .Select(name => (Path.GetFileNameWithoutExtension(name[Prefix.Length..]), Read(name))),
        ]
    );

    /// <summary>All of them, in order of their names.</summary>
    public static IReadOnlyList<(string Key, MeterProfile Profile)> All => s_all.Value;

    /// <summary>The profile of a name; null where there is none.</summary>
    /// <param name="key">"ohms".</param>
    public static MeterProfile? Find(string key) =>
        All.FirstOrDefault(one => string.Equals(one.Key, key.Trim(), StringComparison.OrdinalIgnoreCase)).Profile;

    private static MeterProfile Read(string resource)
    {
        using Stream stream = Assembly.GetExecutingAssembly().GetManifestResourceStream(resource)!;
        using StreamReader text = new(stream);
        return MeterProfileReader.Read(text.ReadToEnd()).Value
            ?? throw new InvalidOperationException($"The profile {resource} of this program is wrong.");
    }
}
