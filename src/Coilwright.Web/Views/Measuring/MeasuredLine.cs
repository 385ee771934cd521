using Coilwright.Papers.Formatting;
using Coilwright.Physics;

namespace Coilwright.Web.Views.Measuring;

/// <summary>A line of an answer: what it is, its value and its 95 % interval.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Value">Its value with unit.</param>
/// <param name="Interval">Its interval, or why there is none.</param>
public sealed record MeasuredLine(string Name, string Value, string Interval)
{
    /// <summary>A value with its interval.</summary>
    public static MeasuredLine Of(string name, Estimate estimate, string unit) =>
        new(
            name,
            FigureFormatter.Value(estimate.Value, unit, 4),
            $"{FigureFormatter.Value(estimate.Low, unit, 4)} – {FigureFormatter.Value(estimate.High, unit, 4)}"
        );
}
