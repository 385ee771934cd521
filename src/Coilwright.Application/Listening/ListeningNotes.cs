using Coilwright.Application.Curves;

namespace Coilwright.Application.Listening;

/// <summary>What the sound of a plucked string leaves out or takes for granted, in sentences.</summary>
internal static class ListeningNotes
{
    /// <summary>The sentences that hold of a pickup and a question.</summary>
    public static IReadOnlyList<string> Of(ResponseSource source, PluckQuestion asked) =>
        [
            "the string swings towards the pickup and away, so little that the voltage follows its velocity; no bridge or body takes part",
            "partials die away as on a usual solid body, the high ones first",
            .. asked.WidthM is null ? (IEnumerable<string>)["the pluck is a sharp corner; a finger is about 10 mm wide"] : [],
            .. source.Model?.Strings is null
                ? (IEnumerable<string>)
                    ["nothing is known of magnets and coils: the pickup hears one point of the string, and the level means nothing"]
                : [],
            .. source.Model is { Strings.StringsAssumed: true }
                ? (IEnumerable<string>)["the recipe names no strings: usual ones of the count are taken"]
                : [],
        ];
}
