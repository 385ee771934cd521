using System.Text.RegularExpressions;

namespace Coilwright.Tests.Architecture;

/// <summary>
/// Which room may see which: Coilwright → Web → Application → Formats, Papers, Bench, Storage → Workshop → Analysis → Physics.
/// </summary>
public static partial class HouseArrows
{
    private static readonly string[] s_workshopDown = ["Coilwright.Workshop", "Coilwright.Analysis", "Coilwright.Physics"];

    /// <summary>What pages and commands may see of what lies behind: papers and meters, never the database.</summary>
    private static readonly string[] s_applicationDown =
    [
        "Coilwright.Application",
        "Coilwright.Formats",
        "Coilwright.Papers",
        "Coilwright.Bench",
        .. s_workshopDown,
    ];

    private static readonly Dictionary<string, string[]> s_mayReference = new(StringComparer.Ordinal)
    {
        ["Coilwright.Physics"] = [],
        ["Coilwright.Analysis"] = ["Coilwright.Physics"],
        ["Coilwright.Workshop"] = ["Coilwright.Analysis", "Coilwright.Physics"],
        ["Coilwright.Storage"] = s_workshopDown,
        ["Coilwright.Formats"] = s_workshopDown,
        ["Coilwright.Bench"] = s_workshopDown,
        ["Coilwright.Papers"] = s_workshopDown,
        ["Coilwright.Application"] =
        [
            "Coilwright.Formats",
            "Coilwright.Papers",
            "Coilwright.Bench",
            "Coilwright.Storage",
            .. s_workshopDown,
        ],
        ["Coilwright.Web"] = s_applicationDown,
        ["Coilwright"] = ["Coilwright.Web", .. s_applicationDown],
    };

    public static IReadOnlyCollection<string> Rooms => s_mayReference.Keys;

    /// <summary>References of a room that run back, sideways, or to a room nobody knows.</summary>
    public static IReadOnlyList<string> Violations(string room, IEnumerable<string> references)
    {
        if (!s_mayReference.TryGetValue(room, out string[]? allowed))
        {
            return [$"{room} is no room of the house"];
        }

        return
        [
            .. references
                .Where(IsOurs)
                .Where(name => name != room && !allowed.Contains(name))
                .Distinct()
                .Select(name => $"{room} → {name}"),
        ];
    }

    /// <summary>Names of the projects that a project file refers to.</summary>
    public static IReadOnlyList<string> ProjectReferences(string projectXml) =>
        [
            .. ProjectReference()
                .Matches(projectXml)
                .Select(match => Path.GetFileNameWithoutExtension(match.Groups[1].Value.Replace('\\', '/'))),
        ];

    /// <summary>Our namespaces that a source text names, by a using directive or in full, each cut to its room.</summary>
    public static IReadOnlyList<string> RoomsNamedIn(string source) =>
        [.. RoomName().Matches(source).Select(match => match.Value).Distinct()];

    /// <summary>What of the web server a project file or an assembly's name refers to.</summary>
    public static IReadOnlyList<string> WebServer(string text) =>
        [.. WebServerName().Matches(text).Select(match => match.Value).Distinct()];

    private static bool IsOurs(string name) =>
        name == "Coilwright" || name == "coilwright" || name.StartsWith("Coilwright.", StringComparison.Ordinal);

    [GeneratedRegex("<ProjectReference\\s+Include=\"([^\"]+)\"")]
    private static partial Regex ProjectReference();

    [GeneratedRegex(@"\bMicrosoft\.(?:AspNetCore|NET\.Sdk\.(?:Razor|Web))\b")]
    private static partial Regex WebServerName();

    [GeneratedRegex(@"\bCoilwright\.(?:Physics|Analysis|Workshop|Formats|Storage|Bench|Papers|Application|Web)\b")]
    private static partial Regex RoomName();
}
