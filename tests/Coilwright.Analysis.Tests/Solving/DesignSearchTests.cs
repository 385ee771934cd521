using System.Globalization;
using Coilwright.Analysis.Forecasts;
using Coilwright.Analysis.Solving;
using Coilwright.Physics;
using Coilwright.Physics.Circuit;
using Coilwright.Physics.Wire;
using Coilwright.Shared;

namespace Coilwright.Analysis.Tests.Solving;

public sealed class DesignSearchTests
{
    private static readonly LoadCircuit s_load = new()
    {
        CableCapacitanceF = 500e-12,
        InputResistanceOhm = 1e6,
        Volume = new(500e3, 1),
        Tone = new(500e3, 22e-9, 1),
    };
    private static readonly string[] s_gauges = ["AWG 41", "AWG 42", "AWG 43", "AWG 44"];

    private static DesignSpace Space(PickupModel model, IReadOnlyList<Objective> wants, int size = 200) =>
        new()
        {
            Families = [model],
            Wires =
            [
                .. s_gauges.Select(gauge => new WireChoice(
                    gauge,
                    "single",
                    WireCatalogue.Standard.ModelFor(gauge, "single", "plain-enamel")
                )),
            ],
            FewestTurns = 2000,
            MostTurns = 20000,
            Load = s_load,
            Wants = wants,
            Front = [new("inductance", true), new("loadedPeak", true), new("wireMass", false)],
            FrontSize = size,
        };

    private static IReadOnlyDictionary<string, double> Full(DesignSpace space, int wire, double turns)
    {
        PickupModel model = space.Families[0];
        PickupModel design = model with
        {
            Coils =
            [
                .. model.Coils.Select(coil =>
                    coil with
                    {
                        Wire = space.Wires[wire].Model!,
                        Winding = coil.Winding with { Turns = turns * coil.Winding.Turns / model.Coils[0].Winding.Turns },
                    }
                ),
            ],
        };
        return Forecaster.Predict(design, s_load, cancel: TestContext.Current.CancellationToken).NamedValues;
    }

    public static TheoryData<string> Recipes => ["narrow tall single coil", "side-by-side humbucker", "wide flat single coil"];

    private static PickupModel Of(string recipe) =>
        recipe switch
        {
            "side-by-side humbucker" => Pickups.Twin(),
            "wide flat single coil" => Pickups.Single() with
            {
                Coils =
                [
                    Pickups.Single().Coils[0] with
                    {
                        Bobbin = new()
                        {
                            CoreLengthM = 72e-3,
                            CoreWidthM = 12e-3,
                            EndRadiusM = 6e-3,
                            WindingHeightM = 4.5e-3,
                            MaxBuildM = 12e-3,
                        },
                    },
                ],
            },
            _ => Pickups.Single(),
        };

    /// <summary>
    /// Every gauge and every 150th count, each forecast in full: none may beat the front by more than the search's stated error.
    /// </summary>
    [Theory]
    [MemberData(nameof(Recipes))]
    public void The_front_is_that_of_exhaustive_enumeration(string recipe)
    {
        const double Error = 1e-3;
        DesignSpace space = Space(Of(recipe), [new Objective("dcResistance", ObjectiveKind.AtMost, 9000, 0, false)], 100_000);
        DesignAnswer answer = DesignSearch.Run(space, cancel: TestContext.Current.CancellationToken);
        Assert.True(answer.Met);
        int looked = 0;
        double worst = 0;
        for (int wire = 0; wire < s_gauges.Length; wire++)
        {
            for (int turns = 2000; turns <= 14_000; turns += 150)
            {
                IReadOnlyDictionary<string, double> at = Full(space, wire, turns);
                double room = space.Families[0].Coils[0].Bobbin.MaxBuildM!.Value;
                if (at["build"] > room || at["dcResistance"] > 9000 * (1 - 3e-4) || !at.ContainsKey("loadedPeak"))
                {
                    continue;
                }

                looked++;
                double short1 = answer.Front.Min(found =>
                    Math.Max(
                        at["inductance"] / found.Values["inductance"] - 1,
                        Math.Max(at["loadedPeak"] / found.Values["loadedPeak"] - 1, found.Values["wireMass"] / at["wireMass"] - 1)
                    )
                );
                worst = Math.Max(worst, short1);
            }
        }

        Assert.InRange(looked, 60, 1000);
        Evidence
            .Own(
                $"Trade-off front of a {recipe}: by how much any design beats it in every axis",
                "exhaustive search by our own forecast: every gauge and every 150th count of turns",
                "method: the search's stated error"
            )
            .Inside(100 * worst, -100 * Error, 100 * Error, "%")
            .Record(FormattableString.Invariant($"{looked} designs"));
    }

    [Theory]
    [MemberData(nameof(Recipes))]
    public void What_the_search_says_of_a_design_is_what_a_full_forecast_says(string recipe)
    {
        DesignSpace space = Space(Of(recipe), [new Objective("dcResistance", ObjectiveKind.AtMost, 9000, 0, false)], 12);
        foreach (Design design in DesignSearch.Run(space, cancel: TestContext.Current.CancellationToken).Front)
        {
            IReadOnlyDictionary<string, double> full = Full(space, design.Wire, design.Turns[0]);
            foreach (
                (string name, double tolerance) in new[]
                {
                    ("dcResistance", 1e-5),
                    ("inductance", 2e-4),
                    ("capacitance", 1e-3),
                    ("loadedPeak", 3e-4),
                    ("fill", 1e-6),
                    ("wireMass", 1e-5),
                    ("hum", 1e-3),
                }
            )
            {
                Assert.True(
                    Math.Abs(design.Values[name] / full[name] - 1) < tolerance || Math.Abs(full[name]) < 1e-9,
                    $"{name}: {design.Values[name]} against {full[name]} at {design.Turns[0]} of {s_gauges[design.Wire]}"
                );
            }
        }
    }

    [Fact]
    public void A_wanted_resistance_is_hit_to_the_turn_with_every_gauge_that_fits()
    {
        DesignSpace space = Space(Pickups.Single(), [new Objective("dcResistance", ObjectiveKind.Equal, 8200, 0.01, false)]);
        DesignAnswer answer = DesignSearch.Run(space, cancel: TestContext.Current.CancellationToken);
        Assert.True(answer.Met);
        Assert.Equal([2, 3], answer.Solutions.Select(design => design.Wire).Order()); // 41 and 42 do not fit the room
        Assert.All(answer.Solutions, design => Assert.Equal(8200, Full(space, design.Wire, design.Turns[0])["dcResistance"], 8200 * 0.003));
    }

    [Fact]
    public void As_much_as_possible_is_the_last_turn_that_fits_where_nothing_else_is_wanted()
    {
        DesignSpace space = Space(Pickups.Single(), [new Objective("inductance", ObjectiveKind.Most, 0, 0, false)]) with
        {
            Wires = [new("AWG 42", "single", null)],
        };
        Design best = DesignSearch.Run(space, cancel: TestContext.Current.CancellationToken).Solutions[0];
        double room = space.Families[0].Coils[0].Bobbin.MaxBuildM!.Value;
        DesignSpace named = space with
        {
            Wires = [new("AWG 42", "single", WireCatalogue.Standard.ModelFor("AWG 42", "single", "plain-enamel"))],
        };
        Assert.InRange(Full(named, 0, best.Turns[0])["build"], 0, room);
        Assert.InRange(Full(named, 0, best.Turns[0] + 1)["build"], room, 1);
    }

    [Fact]
    public void What_cannot_be_met_gives_the_nearest_and_says_what_binds()
    {
        DesignAnswer contradiction = DesignSearch.Run(
            Space(
                Pickups.Single(),
                [
                    new Objective("dcResistance", ObjectiveKind.AtMost, 9000, 0, false),
                    new Objective("inductance", ObjectiveKind.AtLeast, 3, 0, false),
                    new Objective("loadedPeak", ObjectiveKind.AtLeast, 8000, 0, false),
                ]
            ),
            cancel: TestContext.Current.CancellationToken
        );
        Assert.False(contradiction.Met);
        Assert.Contains("loadedPeak", contradiction.Binding);
        Assert.NotEmpty(contradiction.Solutions);
        Assert.Empty(contradiction.Front);

        // Each want by itself can be met; the peak and the inductance stand against each other.
        Assert.All(contradiction.NearestEach.Zip(["dcResistance", "inductance", "loadedPeak"]), near =>
            Assert.Contains(near.Second, near.First!.Values.Keys)
        );
        Assert.True(contradiction.NearestEach[1]!.Values["inductance"] >= 3);
        Assert.True(contradiction.NearestEach[1]!.Values["loadedPeak"] < 8000);
        Assert.True(contradiction.NearestEach[2]!.Values["loadedPeak"] > contradiction.NearestEach[1]!.Values["loadedPeak"]);

        DesignAnswer room = DesignSearch.Run(
            Space(Pickups.Single(), [new Objective("inductance", ObjectiveKind.Equal, 6, 0.01, false)]) with
            {
                Wires = [new("AWG 42", "single", null)],
            },
            cancel: TestContext.Current.CancellationToken
        );
        Assert.False(room.Met);
        Assert.Contains("fill", room.Binding);
        Assert.InRange(Full(Space(Pickups.Single(), []), 1, room.Solutions[0].Turns[0])["build"], 0.98 * 4.3e-3, 4.3e-3);
    }
}
