using Coilwright.Workshop.Recipes.Sizes;

namespace Coilwright.Workshop.Recipes.Reading;

/// <summary>Reads how a part is made, and whether its lengths were measured.</summary>
internal static class MakingReader
{
    /// <summary>Ways to make a part.</summary>
    internal static IReadOnlyList<string> Words { get; } = ["moulded", "by-hand"];

    public static PartMaking Read(JsonFields fields) =>
        new(
            fields.Word("made", Words) switch
            {
                "moulded" => MadeBy.Tool,
                "by-hand" => MadeBy.Hand,
                _ => MadeBy.NotSaid,
            },
            fields.Truth("measured") ?? false
        );
}
