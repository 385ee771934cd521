using Coilwright.Physics;

namespace Coilwright.Web.Views.Recipes;

/// <summary>One of the five answers: what it is, its value with interval, and what it is against the saved revision.</summary>
/// <param name="Label">What it is.</param>
/// <param name="Value">Value with unit; a word where there is none.</param>
public sealed record RecipeAnswer(string Label, string Value)
{
    /// <summary>The value with its interval; null where there is none.</summary>
    public Estimate? Estimate { get; init; }

    /// <summary>Both ends of the interval.</summary>
    public string Interval { get; init; } = "";

    /// <summary>Change against the saved revision; empty when nothing has changed.</summary>
    public string Change { get; init; } = "";
}
