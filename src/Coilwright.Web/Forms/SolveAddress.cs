using System.Text;
using Coilwright.Application.Solving;
using Coilwright.Workshop.Solving;
using Microsoft.AspNetCore.Http;

namespace Coilwright.Web.Forms;

/// <summary>
/// The address of a question asked backwards, with what is pinned of its answers: everything is in the link, so that it can be kept, sent
/// and walked by keyboard.
/// </summary>
/// <param name="RecipeId">The recipe.</param>
/// <param name="Objective">What is wanted, a line each.</param>
/// <param name="Vary">What may change.</param>
/// <param name="Pins">Keys of the pinned answers, in the order they were pinned.</param>
/// <param name="Against">Key of the pinned one that the others are compared with; empty for the recipe as it stands.</param>
public sealed record SolveAddress(Guid RecipeId, string Objective, string Vary, IReadOnlyList<string> Pins, string Against)
{
    public const int MostPins = 6;

    /// <summary>The question in an address; turns may change where it says nothing of it.</summary>
    public static SolveAddress Of(Guid recipe, IQueryCollection query) =>
        new(
            recipe,
            query["want"].ToString(),
            query.ContainsKey("vary") ? query["vary"].ToString() : "turns",
            [.. query["pin"].OfType<string>().Distinct().Take(MostPins)],
            query["against"].ToString()
        );

    /// <summary>True when no more can be pinned.</summary>
    public bool IsFull => Pins.Count >= MostPins;

    public bool IsPinned(Solution solution) => Pins.Contains(SolutionKey.Of(solution));

    /// <summary>Link that pins an answer, or takes it off when it is pinned.</summary>
    public string Toggled(Solution solution)
    {
        string key = SolutionKey.Of(solution);
        if (!IsPinned(solution))
        {
            return (this with { Pins = [.. Pins, key] }).Link("pinned");
        }

        string[] left = [.. Pins.Where(pin => pin != key)];
        return (this with { Pins = left, Against = Against == key ? "" : Against }).Link(Pins.Count > 1 ? "pinned" : "answer");
    }

    /// <summary>Link that tells the others against this one; empty for the recipe as it stands.</summary>
    public string Told(string key) => (this with { Against = key }).Link("pinned");

    /// <summary>This page, from its top: a place in it would keep a browser from loading it again.</summary>
    public string Page => Link("");

    private string Link(string place)
    {
        StringBuilder link = new($"/recipes/{RecipeId}/solve?want={Uri.EscapeDataString(Objective)}&vary={Uri.EscapeDataString(Vary)}");
        foreach (string pin in Pins)
        {
            link.Append("&pin=").Append(Uri.EscapeDataString(pin));
        }

        link.Append(Against.Length > 0 ? $"&against={Uri.EscapeDataString(Against)}" : "");
        return link.Append(place.Length > 0 ? "#" + place : "").ToString();
    }
}
