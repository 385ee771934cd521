using Coilwright.Analysis.Uncertainty;
using Coilwright.Physics;

namespace Coilwright.Analysis.Forecasts;

/// <summary>What the shop's readings say, as inputs of the forecast.</summary>
internal sealed partial class ForecastInputs
{
    private readonly Dictionary<(string Name, LearntFactor Learnt), int> _common = [];

    /// <summary>Places of what was learnt of each coil.</summary>
    public IReadOnlyList<LearntPlaces> Learnt { get; private set; } = [];

    private void AddLearnt(PickupModel model) =>
        Learnt = [
            .. model.Coils.Select(coil =>
            {
                string of = model.Coils.Count > 1 ? $" of coil {coil.Name}" : "";
                return new LearntPlaces(
                    Place("DC resistance over the plain forecast", of, coil.LearntResistance),
                    Place("inductance over the plain forecast", of, coil.Learnt?.Inductance)
                );
            }),
        ];

    /// <summary>Coils of which the same was learnt share its doubt; each scatters about it by itself.</summary>
    private (int Common, int Coil)? Place(string name, string of, LearntFactor? learnt)
    {
        if (learnt is null)
        {
            return null;
        }

        if (!_common.TryGetValue((name, learnt), out int common))
        {
            common = _common[(name, learnt)] = Append(Input(name, learnt.Factor, learnt.Half, learnt.Source) with { IsCommon = true });
        }

        return (common, Append(Input($"scatter of the shop's coils about it{of}", 1, learnt.CoilHalf, learnt.Source)));
    }

    private static UncertainInput Input(string name, double middle, double half, string source) =>
        new(name, "1", new Estimate(middle, middle * Math.Exp(-half), middle * Math.Exp(half), Basis.Learnt), Scatter.LogNormal, source)
        {
            Cause = "learnt",
        };
}

/// <summary>Places of what was learnt of a coil: what its kind has in common, and its own scatter; null where nothing was.</summary>
internal readonly record struct LearntPlaces((int Common, int Coil)? DcResistance, (int Common, int Coil)? Inductance);
