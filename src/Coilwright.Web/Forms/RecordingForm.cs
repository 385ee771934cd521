using Coilwright.Application.Listening;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes.Circuits;

namespace Coilwright.Web.Forms;

/// <summary>What the page of a person's own recording asks for, but the recording.</summary>
/// <param name="From">The pickup of the recording.</param>
/// <param name="To">The pickup wanted.</param>
/// <param name="Matched">True to bring both to one level.</param>
public sealed record RecordingForm(PickupOfSound From, PickupOfSound To, bool Matched)
{
    /// <summary>What the two pickups are called over their fields.</summary>
    public static IReadOnlyDictionary<string, string> Labels { get; } =
        new Dictionary<string, string>
        {
            ["from"] = "The pickup that it was recorded with",
            ["to"] = "The pickup that it shall sound like",
        };

    /// <summary>What they are called within a sentence.</summary>
    public static IReadOnlyDictionary<string, string> Short { get; } =
        new Dictionary<string, string> { ["from"] = "the recording", ["to"] = "the sound wanted" };

    /// <summary>Before anybody has chosen.</summary>
    public static RecordingForm First { get; } =
        new(new PickupOfSound(null, UsualLoad.Player.Key, "", ""), new PickupOfSound(null, UsualLoad.Player.Key, "", ""), Matched: true);

    /// <summary>The recipe chosen for a pickup; null for none.</summary>
    /// <param name="name">"from" or "to".</param>
    public Guid? Recipe(string name) => Of(name).RecipeId;

    /// <summary>Key of the load chosen for a pickup.</summary>
    /// <param name="name">"from" or "to".</param>
    public string Load(string name) => Of(name).LoadKey;

    /// <summary>Problems for the list on top, under what their fields are called on the page.</summary>
    public static IReadOnlyList<Problem> Named(IReadOnlyList<Problem> problems) =>
        [.. problems.Select(problem => problem with { Field = Called(problem.Field) })];

    private static string Called(string field) =>
        field switch
        {
            "from" or "to" => Short[field],
            "fromLoad" or "toLoad" => "load of " + Short[field[..^4]],
            _ => field,
        };

    private PickupOfSound Of(string name) => name == "from" ? From : To;
}
