using Coilwright.Analysis.Solving;
using Coilwright.Physics;

namespace Coilwright.Workshop.Solving;

/// <summary>How a recipe that was found stands to a want.</summary>
public enum WantState
{
    /// <summary>As much or as little as possible was wanted: nothing to meet.</summary>
    Wished,

    /// <summary>The whole 95 % interval meets it.</summary>
    Met,

    /// <summary>Some of its interval meets it and some does not.</summary>
    MetWithinInterval,

    /// <summary>Nothing of its interval meets it.</summary>
    Missed,
}

/// <summary>One want of a recipe that was found.</summary>
/// <param name="Want">The want.</param>
/// <param name="Estimate">The forecast of its quantity; null where the recipe has none.</param>
/// <param name="State">How it stands.</param>
public sealed record WantMark(Objective Want, Estimate? Estimate, WantState State)
{
    /// <summary>The end of the want that the value lies beyond, SI or dB; null where it meets it or has no value.</summary>
    public double? Bound =>
        Estimate switch
        {
            { } found when found.Value < Want.Lowest => Want.Lowest,
            { } found when found.Value > Want.Highest => Want.Highest,
            _ => null,
        };

    /// <summary>Marks of a recipe, in the order of the wants.</summary>
    public static IReadOnlyList<WantMark> Of(IReadOnlyList<Objective> wants, Solution found) =>
        [.. wants.Select(want => Of(want, found.Prediction.Named.GetValueOrDefault(want.Quantity)?.Estimate))];

    private static WantMark Of(Objective want, Estimate? estimate) =>
        new(want, estimate, want.IsLimit ? StateOf(want, estimate) : WantState.Wished);

    private static WantState StateOf(Objective want, Estimate? estimate)
    {
        if (estimate is not { } found || !double.IsFinite(found.Value))
        {
            return WantState.Missed;
        }

        bool apart = found.High < want.Lowest || found.Low > want.Highest,
            whole = found.Low >= want.Lowest && found.High <= want.Highest;
        WantState touching = whole ? WantState.Met : WantState.MetWithinInterval;
        return apart ? WantState.Missed : touching;
    }
}
