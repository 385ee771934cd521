using System.Globalization;
using System.Text.Json.Nodes;
using Coilwright.Application.Comparisons;
using Coilwright.Application.Listening;
using Microsoft.AspNetCore.Http;

namespace Coilwright.Web.Forms;

/// <summary>What the compare page asks for: designs, loads, a measured curve, and which design is pinned.</summary>
/// <param name="Designs">Up to six recipes, in their order on the page; null for a place left empty.</param>
/// <param name="Pinned">Number of the design that the others are told against.</param>
/// <param name="Load">The load of the form.</param>
/// <param name="Loads">Keys of usual loads to overlay.</param>
/// <param name="Bare">Whether the unloaded curves are overlaid.</param>
/// <param name="Curve">A measured curve as a table; empty for none.</param>
public sealed record CompareForm(
    IReadOnlyList<Guid?> Designs,
    int Pinned,
    JsonNode Load,
    IReadOnlyList<string> Loads,
    bool Bare,
    string Curve
)
{
    public const int MostDesigns = 6;

    /// <summary>Fields of the load, the ones that are dragged with a slider.</summary>
    public static IReadOnlyList<RecipeField> LoadFields { get; } =
    [
        .. LoadForm.Fields.Select(field =>
            field.Path switch
            {
                "load.volume.setting" or "load.tone.setting" => field with { Slider = new SliderRange(0, 1, 0.01, "") },
                "load.volume.resistance" or "load.tone.resistance" => field with { Slider = new SliderRange(100, 1000, 10, " kΩ") },
                "load.cable.capacitance" => field with { Slider = new SliderRange(0, 2000, 10, " pF") },
                _ => field,
            }
        ),
    ];

    /// <summary>What is asked.</summary>
    public CompareQuestion Question => new(Designs, Pinned, Load.ToJsonString(), Loads, Bare, Curve);

    /// <summary>Where the first designs of these are heard, on a player's load; empty where fewer than two are chosen.</summary>
    public string Listen
    {
        get
        {
            Guid[] heard = [.. Designs.OfType<Guid>().Distinct().Take(ListenQuestion.MostDesigns)];
            return heard.Length > 1
                ? "/listen?" + string.Join('&', heard.Select((recipe, place) => $"{ListenForm.Name("design", place)}={recipe}"))
                : "";
        }
    }

    /// <summary>The page before anybody has chosen: the first two recipes.</summary>
    public static CompareForm First(IReadOnlyList<Guid> recipes) =>
        new(
            [.. Enumerable.Range(0, MostDesigns).Select(i => i < Math.Min(2, recipes.Count) ? recipes[i] : (Guid?)null)],
            0,
            LoadForm.Default(),
            [],
            false,
            ""
        );

    public static CompareForm Read(IFormCollection form) =>
        new(
            [
                .. Enumerable
                    .Range(0, MostDesigns)
                    .Select(i => Guid.TryParse(form[FormattableString.Invariant($"design{i}")].ToString(), out Guid id) ? id : (Guid?)null),
            ],
            int.TryParse(form["pinned"].ToString(), NumberStyles.None, CultureInfo.InvariantCulture, out int pinned) && pinned < MostDesigns
                ? pinned
                : 0,
            LoadForm.Read(form),
            [.. form["loads"].OfType<string>()],
            form["bare"].ToString().Length > 0,
            form["curve"].ToString()
        );
}
