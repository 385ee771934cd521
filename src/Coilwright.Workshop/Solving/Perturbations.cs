using Coilwright.Physics;
using Coilwright.Physics.Wire;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Workshop.Solving;

/// <summary>The small changes that a designer asks about first: wire, gauge, turns, height, poles.</summary>
internal static class Perturbations
{
    /// <summary>How much thicker the copper is taken.</summary>
    public const double Thicker = 0.01;

    /// <summary>How many more turns are taken on each coil.</summary>
    public const int MoreTurns = 100;

    /// <summary>How much more winding height is taken, m.</summary>
    public const double HigherM = 1e-3;

    /// <summary>How much more permeable the poles are taken.</summary>
    public const double MorePermeable = 0.1;

    /// <summary>Permeability below which a pole counts as air.</summary>
    private const double NoCore = 1.001;

    /// <summary>
    /// The recipe as it stands, and every change of it; what was measured on the winding as it is holds for none of the others and is left
    /// out of all.
    /// </summary>
    public static (PickupModel Base, IReadOnlyList<Perturbation> Changes) Of(Recipe recipe, KnownParts parts)
    {
        string json = new RecipeEdit(recipe.Json).WithoutMeasuredWinding().Json;
        Reread read = new(parts.With(learning: null)); // a bobbin of another height is none that was learnt
        PickupModel model = read.Model(json, out _) ?? throw new InvalidOperationException("A recipe that was read cannot be read again.");
        List<Perturbation> changes =
        [
            new("thickerWire", "wire 1 % thicker", Thickened(model)),
            Stepped(recipe, json, read, finer: true),
            Stepped(recipe, json, read, finer: false),
            read.Edited(
                "moreTurns",
                $"{MoreTurns} turns more",
                new RecipeEdit(json).Turns([.. recipe.Coils.Select(coil => (int)Math.Round(coil.Winding.Turns) + MoreTurns)])
            ),
            read.Edited(
                "higher",
                "winding 1 mm higher",
                new RecipeEdit(json).Bobbin("windingHeight", recipe.Coils[0].Bobbin.WindingHeight.Si + HigherM)
            ),
        ];
        if (model.Coils.SelectMany(coil => coil.Poles).Any(pole => pole.RelativePermeability.Value > NoCore))
        {
            changes.Add(new("permeablePoles", "poles 10 % more permeable", Permeable(model)));
        }

        return (model, changes);
    }

    /// <summary>
    /// The copper grows, the film stays as thick as it is; a resistance measured on the spool falls with the copper's section.
    /// </summary>
    private static PickupModel Thickened(PickupModel model) =>
        model with
        {
            Coils =
            [
                .. model.Coils.Select(coil =>
                {
                    WireModel wire = coil.Wire;
                    double more = Thicker * wire.BareDiameterM.Value,
                        section = 1 / ((1 + Thicker) * (1 + Thicker));
                    return coil with
                    {
                        Wire = wire with
                        {
                            BareDiameterM = Moved(wire.BareDiameterM, more),
                            OverallDiameterM = Moved(wire.OverallDiameterM, more),
                            MeasuredOhmPerM = wire.MeasuredOhmPerM is { } ohm
                                ? new Estimate(ohm.Value * section, ohm.Low * section, ohm.High * section, ohm.Basis)
                                : null,
                        },
                    };
                }),
            ],
        };

    private static Estimate Moved(Estimate diameterM, double byM) =>
        new(diameterM.Value + byM, diameterM.Low + byM, diameterM.High + byM, diameterM.Basis);

    private static PickupModel Permeable(PickupModel model) =>
        model with
        {
            Coils =
            [
                .. model.Coils.Select(coil =>
                    coil with
                    {
                        Poles =
                        [
                            .. coil.Poles.Select(pole =>
                            {
                                Estimate mu = pole.RelativePermeability;
                                const double more = 1 + MorePermeable;
                                return pole with
                                {
                                    RelativePermeability = new Estimate(mu.Value * more, mu.Low * more, mu.High * more, mu.Basis),
                                };
                            }),
                        ],
                    }
                ),
            ],
        };

    /// <summary>One whole number of AWG, or one size of the metric series.</summary>
    private static Perturbation Stepped(Recipe recipe, string json, Reread read, bool finer)
    {
        RecipeWire wire = recipe.Coils[0].Wire;
        string key = finer ? "finerGauge" : "coarserGauge",
            side = finer ? "finer" : "coarser";
        if (wire.Gauge.Length == 0 || WireCatalogue.Standard.Find(wire.Gauge) is not { } size)
        {
            return new(key, $"one gauge {side}", null, "the wire is stated by its diameter, not by a gauge of the tables");
        }

        WireSize[] alike =
        [
            .. WireCatalogue.Standard.Sizes.Where(other =>
                other.IsMetric == size.IsMetric && (other.Bare.NominalM < size.Bare.NominalM) == finer && other.Gauge != size.Gauge
            ),
        ];
        WireSize? next = size.IsMetric
            ? alike.MinBy(other => Math.Abs(other.Number - size.Number))
            : alike.FirstOrDefault(other => Math.Abs(Math.Abs(other.Number - size.Number) - 1) < 1e-6);
        string last = size.IsMetric ? "the metric series ends at " : "the table ends at ";
        if (next is null)
        {
            WireSize? end = finer ? alike.LastOrDefault() : alike.FirstOrDefault();
            return new(key, $"one gauge {side}", null, $"no {side} gauge: {last}{(end ?? size).Gauge}");
        }

        return next.Builds.ContainsKey(wire.Build)
            ? Rewired(key, next, wire.Build, json, read)
            : new(
                key,
                next.Gauge,
                null,
                $"{next.Gauge} is not made in build \"{wire.Build}\"; it is made in {string.Join(", ", next.Builds.Keys)}"
            );
    }

    private static Perturbation Rewired(string key, WireSize next, string build, string json, Reread read)
    {
        RecipeEdit edit = new(json);
        string followed = string.Concat(edit.Wire(next.Gauge, build).Select(pair => $", {pair.Key} {pair.Value}"));
        return read.Edited(key, $"{next.Gauge}{followed}", edit);
    }

    /// <summary>Reads changed documents again, with what the shop knows of its bobbins.</summary>
    private sealed class Reread(KnownParts parts)
    {
        public PickupModel? Model(string json, out string? whyNot)
        {
            ReadOutcome<Recipe> read = RecipeReader.Read(json);
            whyNot = read.Ok ? null : string.Join("; ", read.Problems.Select(Told));
            return read is { Ok: true, Value: { } recipe } ? RecipeModelBuilder.ToModel(parts.Fill(recipe)) : null;
        }

        private static string Told(Problem problem)
        {
            string allowed = problem.Allowed is { } words ? $" ({words})" : "";
            return KeyLabels.In($"{FieldLabels.Inside(problem.Field)}: {problem.Message}{allowed}");
        }

        public Perturbation Edited(string key, string words, RecipeEdit edit) =>
            new(key, words, Model(edit.Json, out string? whyNot), whyNot);
    }
}
