using System.Globalization;
using Coilwright.Physics;
using Coilwright.Physics.Sizes;
using Coilwright.Physics.Winding;
using MathNet.Numerics.Distributions;

namespace Coilwright.Analysis.Forecasts.Sizes;

/// <summary>Gaps between poles, and between poles and wire, that the intervals of the lengths close in some of the pieces.</summary>
/// <remarks>A gap is a sum of lengths that scatter normally, so the share of pieces in which it is below zero is exact. Parts that touch by
/// design have no gap.</remarks>
internal static class MeetingParts
{
    /// <summary>Fewer pieces than this are not spoken of.</summary>
    private const double Least = 1e-3;

    private const double TouchM = 1e-6;

    public static IEnumerable<ForecastWarning> Find(PickupModel model)
    {
        for (int c = 0; c < model.Coils.Count; c++)
        {
            for (int row = 0; row < model.Coils[c].Poles.Count; row++)
            {
                foreach (ForecastWarning warning in new Row(model, c, row).Warnings())
                {
                    yield return warning;
                }
            }
        }
    }

    private sealed class Row(PickupModel model, int coil, int row)
    {
        private readonly PoleModel _pole = model.Coils[coil].Poles[row];
        private readonly Bobbin _bobbin = model.Coils[coil].Bobbin;

        public IEnumerable<ForecastWarning> Warnings()
        {
            string path = string.Create(CultureInfo.InvariantCulture, $"coils[{coil}].poles[{row}]");
            bool blade = _pole.Shape == PoleShape.Blade;
            if (Nearest() is { } apartM && !blade)
            {
                double perSpacing = Of(SizeKind.PoleSpacing) is { } spacing ? apartM / spacing.Estimate.Value : 0;
                (double, SizeKind)[] parts = [(1, SizeKind.PoleDiameter), (perSpacing, SizeKind.PoleSpacing)];
                if (Told(apartM - _pole.DiameterM, parts) is { } share)
                {
                    yield return new($"{path}.spacing", $"the poles of this row stand into each other {share}");
                }
            }

            if (!ReachesWinding())
            {
                yield break;
            }

            (double, SizeKind)[] across = [(1, SizeKind.CoreWidth), (1, SizeKind.PoleDiameter)];
            if (Told(_bobbin.CoreWidthM - _pole.DiameterM, across) is { } reach)
            {
                yield return new(
                    $"{path}.{(blade ? "thickness" : "diameter")}",
                    $"the pole reaches through the former to the wire {reach}"
                );
            }

            if (Along(blade) is { } end)
            {
                yield return new($"{path}.{(blade ? "width" : "positions")}", $"the outermost pole reaches the wire {end}");
            }
        }

        private string? Along(bool blade)
        {
            double outermostM = _pole.PositionsM.Max(Math.Abs),
                halfM = (blade ? _pole.WidthM : _pole.DiameterM) / 2,
                stretch = Of(SizeKind.PoleSpacing) is { } spacing ? outermostM / spacing.Estimate.Value : 0;
            return Told(
                _bobbin.CoreLengthM / 2 - outermostM - halfM,
                [(0.5, SizeKind.CoreLength), (0.5, blade ? SizeKind.PoleWidth : SizeKind.PoleDiameter), (stretch, SizeKind.PoleSpacing)]
            );
        }

        private double? Nearest() =>
            _pole.PositionsM.Count < 2
                ? null
                : _pole.PositionsM.Order().Zip(_pole.PositionsM.Order().Skip(1), (left, right) => right - left).Min();

        private bool ReachesWinding()
        {
            double halfM = _bobbin.WindingHeightM / 2;
            return _pole.TopsM.Any(topM => topM > -halfM && topM - _pole.LengthM < halfM);
        }

        private PartSize? Of(SizeKind kind) =>
            model.Sizes.FirstOrDefault(size => size.Kind == kind && size.Part == coil && (size.IsOfBobbin || size.Row == row));

        /// <summary>In how many pieces a gap is closed, in words; null where that is rare, or where parts touch by design.</summary>
        private string? Told(double gapM, (double Times, SizeKind Kind)[] parts)
        {
            double deviationM = Math.Sqrt(
                parts.Sum(part => Of(part.Kind) is { } size ? Math.Pow(part.Times * size.Estimate.StandardDeviation, 2) : 0)
            );
            if (gapM < TouchM || deviationM <= 0)
            {
                return null;
            }

            double share = Normal.CDF(0, 1, -gapM / deviationM);
            return share < Least
                ? null
                : string.Create(
                    CultureInfo.InvariantCulture,
                    $"in about {100 * share:0.#} % of pieces: between them are {gapM * 1e3:0.###} mm "
                        + $"± {Estimate.Sigmas95 * deviationM * 1e3:0.###} mm"
                );
        }
    }
}
