using Coilwright.Analysis.Originals;
using Coilwright.Physics;
using Coilwright.Physics.Wire;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Workshop.Originals;

/// <summary>
/// What an original may have been made of, and how common each is before any reading. The weights are common practice, no source.
/// </summary>
public static class OriginalCandidates
{
    /// <summary>Stands for a pole whose material is not told.</summary>
    public const string UnknownPole = "alnico-5";

    private static readonly (string Material, double Weight)[] s_poles =
    [
        ("alnico-5", 0.55),
        ("alnico-2", 0.12),
        ("alnico-3", 0.08),
        ("alnico-4", 0.05),
        ("low-carbon-steel", 0.20),
    ];

    /// <summary>Every candidate that what is known leaves open.</summary>
    public static IReadOnlyList<OriginalCandidate> For(Original original)
    {
        List<OriginalCandidate> candidates = [];
        foreach (WireSize size in WireCatalogue.Standard.Sizes.Where(size => original.Gauge is null || size.Gauge == original.Gauge))
        {
            foreach (string build in size.Builds.Keys.Where(build => original.Build is null || build == original.Build))
            {
                foreach ((string material, double weight) in original.PolesUnknown ? s_poles : [("", 1)])
                {
                    double all = Common(size) * CommonBuild(build) * weight;
                    candidates.Add(new OriginalCandidate(size.Gauge, build, material, ModelOf(original.Known, size, build, material), all));
                }
            }
        }

        return candidates;
    }

    /// <summary>42 and 43 AWG wind most pickups; half sizes are rare, and where inch sizes rule metric ones are too.</summary>
    private static double Common(WireSize size)
    {
        double number = size.IsMetric ? 36 - 39 * Math.Log(size.Number / 0.127) / Math.Log(92) : size.Number;
        double about = Math.Exp(-0.5 * Math.Pow((number - 42.4) / 1.2, 2)) + 0.01;
        if (size.IsMetric)
        {
            return about * 0.06;
        }

        bool half = Math.Abs(number - Math.Round(number)) > 0.1;
        return half ? about * 0.08 : about;
    }

    private static double CommonBuild(string build) =>
        build switch
        {
            "single" or "grade-1" => 0.8,
            "heavy" or "grade-2" => 0.18,
            _ => 0.02,
        };

    private static PickupModel ModelOf(Recipe known, WireSize size, string build, string material)
    {
        PickupModel model = RecipeModelBuilder.ToModel(
            known with
            {
                Coils =
                [
                    .. known.Coils.Select(coil =>
                        coil with
                        {
                            Poles =
                                material.Length == 0
                                    ? coil.Poles
                                    :
                                    [
                                        .. coil.Poles.Select(pole =>
                                            pole.Material.Name == UnknownPole
                                                ? pole with
                                                {
                                                    Material = pole.Material with { Name = material },
                                                }
                                                : pole
                                        ),
                                    ],
                        }
                    ),
                ],
            }
        );
        return model with
        {
            Coils =
            [
                .. model.Coils.Select(
                    (coil, c) =>
                    {
                        WireModel table = WireCatalogue.Standard.ModelFor(size.Gauge, build, known.Coils[c].Wire.Insulation);
                        return coil with
                        {
                            Wire = table with
                            {
                                BareDiameterM = known.Coils[c].Wire.BareDiameter is null ? table.BareDiameterM : coil.Wire.BareDiameterM,
                                OverallDiameterM = known.Coils[c].Wire.OverallDiameter is null
                                    ? table.OverallDiameterM
                                    : coil.Wire.OverallDiameterM,
                                MeasuredOhmPerM = coil.Wire.MeasuredOhmPerM,
                            },
                        };
                    }
                ),
            ],
        };
    }
}
