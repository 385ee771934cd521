using Coilwright.Analysis.Uncertainty;
using Coilwright.Physics;
using Coilwright.Physics.Sizes;
using Coilwright.Physics.Winding;

namespace Coilwright.Analysis.Forecasts;

/// <summary>
/// The uncertain inputs of a forecast, and where each coil finds its own. Coils on the same wire share that wire's scatter.
/// </summary>
internal sealed partial class ForecastInputs
{
    /// <summary>A counter is trusted to ±0.2 % when nothing else is known [Practice].</summary>
    private const double CounterInterval = 0.002;

    /// <summary>Wire lengthens a little on any winder; ± 0.5 % about what the recipe says [Practice].</summary>
    private const double StretchInterval = 0.005;

    /// <summary>Output in volts is not to be trusted beyond ±30 %.</summary>
    public const double SteelFactor = 1.3;

    /// <summary>How well the height of a string is known, m.</summary>
    public const double HeightM = 1e-4;

    /// <summary>Error of the loss in a cover or plate (95 %), against finite elements.</summary>
    private const double SheetModelError = 0.03;

    private static readonly UncertainInput s_walls = new(
        "insulation between winding and metal",
        "1",
        Estimate.Exact(1),
        Scatter.LogNormal,
        "permittivity and thickness of walls, flanges and fill, and a factor of 1.5 for the method"
    );

    private static readonly UncertainInput s_unsaid = new(
        "hot end and grounding that the recipe does not say",
        "1",
        new Estimate(0, -1, 1, Basis.Assumed),
        Scatter.Normal,
        "assumed: the finish is hot, covers and plates are grounded, nothing else is; 1 is the other way"
    );

    private readonly List<UncertainInput> _all = [];
    private readonly Dictionary<string, (int Bare, int Overall, int OhmPerM)> _wires = [];

    public ForecastInputs(PickupModel model, ForecastScene scene)
    {
        IReadOnlyList<LayEstimate> lays = scene.Lays;
        Coils = [.. model.Coils.Select((coil, c) => Add(coil, lays[c], model.Coils.Count > 1 ? $" of coil {coil.Name}" : ""))];
        CoreCoil = Enumerable.Range(0, model.Coils.Count).MaxBy(c => scene.Field.InductanceSpreadH[c, c]);
        double henry = scene.Field.StaticInductanceH[CoreCoil, CoreCoil],
            spread = scene.Field.InductanceSpreadH[CoreCoil, CoreCoil];
        Cores = Append(
            new(
                "inductance with cores of coil " + model.Coils[CoreCoil].Name,
                "H",
                new Estimate(henry, henry - spread, henry + spread, Basis.Assumed),
                Scatter.Normal,
                "permeability of the pole materials and the field model's own error"
                    + (scene.Field.DrawnShare > 0 ? "; flux that magnetic metalwork draws, which is not solved" : "")
            )
            {
                Cause = "permeability",
                IsCommon = true,
            }
        );
        Sheets = [.. scene.Field.SheetEffects.Select(effect => Append(SheetInput(effect.Sheet)))];
        Capacitance = Append(
            new(
                "capacitance factor of the windings",
                "1",
                new Estimate(1, 1 / LayForecast.CapacitanceFactor95, LayForecast.CapacitanceFactor95, Basis.Assumed),
                Scatter.LogNormal,
                "enamel permittivity and real scatter: a factor of 1.5 either way until a coil of the kind has been measured"
            )
            {
                Cause = "capacitance",
                IsCommon = true,
            }
        );
        Stray = AddStray(model, scene);
        Temperature = Append(
            new("temperature of the winding", "°C", Estimate.Exact(model.TemperatureC), Scatter.Normal, "as stated")
            {
                Cause = "temperature",
            }
        );
        Strings = scene.Strings is { } strings ? Add(model, strings) : null;
        Drawn =
            scene.Field.DrawnShare > 0
                ? Append(
                    new(
                        "flux that magnetic metalwork draws",
                        "1",
                        new Estimate(1, 1 / (1 + scene.Field.DrawnShare), 1 + scene.Field.DrawnShare, Basis.Assumed),
                        Scatter.LogNormal,
                        "not solved; our assumption"
                    )
                    {
                        Cause = "permeability",
                        IsCommon = true,
                    }
                )
                : null;
        Poles = scene.Poles is { } poles ? Add(poles) : null;
        if (model.Coils.All(coil => coil.Winding.MeasuredCapacitanceF is not null))
        {
            _all[Capacitance] = _all[Capacitance] with
            {
                Estimate = Estimate.Within(1, 0.02, Basis.Measured),
                Source = "measured capacitance, ±2 %",
            };
        }

        AddSizes(model);
        AddLearnt(model);
    }

    /// <summary>Places of the strings' inputs: steel, magnets, height; null without strings.</summary>
    public (int Steel, int Magnets, int Height)? Strings { get; }

    /// <summary>Place of the factor on output and magnets' field for magnetic metalwork that is not solved; null without such.</summary>
    public int? Drawn { get; }

    /// <summary>Places of the inputs of the field over the poles: magnets, the field's model, distance; null without.</summary>
    public (int Magnets, int Model, int Jig)? Poles { get; }

    public IReadOnlyList<UncertainInput> All => _all;
    public IReadOnlyList<CoilPlaces> Coils { get; }

    /// <summary>
    /// Place of the static inductance of <see cref="CoreCoil"/>, H: how the cores scatter. Every coil's cores go with it.
    /// </summary>
    public int Cores { get; }

    /// <summary>The coil whose cores are the least certain.</summary>
    public int CoreCoil { get; }

    /// <summary>How far the cores stand from their middle, −1 and 1 at the ends of their interval.</summary>
    public double CoreDeparture(double[] x)
    {
        Estimate cores = _all[Cores].Estimate;
        return cores.IsExact ? 0 : (x[Cores] - cores.Value) / (cores.High - cores.Value);
    }

    /// <summary>Places of the conductivity of each conducting cover or plate, S/m.</summary>
    public IReadOnlyList<int> Sheets { get; }

    public int Capacitance { get; }

    /// <summary>Places of what lies across the pickup's wires beside its windings.</summary>
    public StrayPlaces Stray { get; }

    /// <summary>
    /// Place of the winding's temperature, °C; exact in a forecast, scattered in a run of pieces that are read in a room.
    /// </summary>
    public int Temperature { get; }

    private (int Steel, int Magnets, int Height) Add(PickupModel model, StringsOver strings) =>
        (
            Append(
                new(
                    "string steel",
                    "1",
                    new Estimate(1, 1 / SteelFactor, SteelFactor, Basis.Assumed),
                    Scatter.LogNormal,
                    "how drawn wire magnetises: ±30 % of the output, the same for every design, so that designs "
                        + "compare within a few per cent"
                )
                {
                    Cause = "stringSteel",
                    IsCommon = true,
                }
            ),
            AddMagnets(strings.MagnetSpread),
            Append(HeightInput(model.Strings!, ClearanceOf(model)))
        );

    private static UncertainInput HeightInput(StringSetModel set, PartSize? stated) =>
        new(
            "clearance to the strings",
            "m",
            stated?.Estimate ?? new Estimate(set.ClearanceM, set.ClearanceM - HeightM, set.ClearanceM + HeightM, Basis.Assumed),
            Scatter.Normal,
            stated?.Source ?? "set by hand to ±0.1 mm, common practice, no source"
        )
        {
            Cause = "clearance",
            IsCommon = stated is { PieceShare: <= 0 },
            PieceShare = stated?.PieceShare ?? 1,
        };

    private (int Magnets, int Model, int Jig) Add(PolesOver poles) =>
        (
            Strings?.Magnets ?? AddMagnets(poles.MagnetSpread),
            Append(
                new(
                    "field model over the poles",
                    "1",
                    new Estimate(1, 1 / (1 + poles.ModelSpread), 1 + poles.ModelSpread, Basis.Assumed),
                    Scatter.LogNormal,
                    "permeabilities of magnets and cores, and the error of the surfaces' cutting"
                )
                {
                    Cause = "permeability",
                    IsCommon = true,
                }
            ),
            Append(
                new(
                    "distance of the sensor",
                    "m",
                    new Estimate(poles.JigM, poles.JigM - PolesOver.JigErrorM, poles.JigM + PolesOver.JigErrorM, Basis.Assumed),
                    Scatter.Normal,
                    "spacer and depth of the sensor in its probe, ±0.05 mm, our assumption"
                )
                {
                    Cause = "jig",
                }
            )
        );

    private StrayPlaces AddStray(PickupModel model, ForecastScene scene)
    {
        Physics.Electrostatics.StrayEstimate stray = scene.Stray;
        Estimate wider = stray.Metal.Value >= stray.Between.Value ? stray.Metal : stray.Between;
        return new StrayPlaces(
            scene.Leads is { } leads ? AppendStray(LeadInput(leads, named: model.Leads is not null)) : null,
            wider.Value > 0 ? AppendStray(s_walls with { Estimate = Over(wider) }) : null,
            stray.UnsaidF > 0 ? AppendStray(s_unsaid) : null
        );

        static Estimate Over(Estimate estimate) => new(1, estimate.Low / estimate.Value, estimate.High / estimate.Value, Basis.Assumed);
    }

    private static UncertainInput LeadInput(Estimate farad, bool named)
    {
        const string Unnamed = "0.2 to 0.6 m of the usual kind, from memory; name the leads, or read them with a meter";
        const string Named = "length × capacitance per metre; what the recipe does not state is from memory";
        string name = named ? "capacitance of the leads" : "capacitance of leads that the recipe does not name";
        return new UncertainInput(name, "F", farad, Scatter.LogNormal, named ? Named : Unnamed);
    }

    private int AppendStray(UncertainInput input) => Append(input with { Cause = "capacitance", IsCommon = true });

    private int AddMagnets(double spread) =>
        Append(
            new(
                "magnet strength",
                "1",
                new Estimate(1, 1 / (1 + spread), 1 + spread, Basis.Assumed),
                Scatter.LogNormal,
                "working polarisation of the magnets; a gauss reading at a pole settles it"
            )
            {
                Cause = "polarisation",
                IsCommon = true,
            }
        );

    private CoilPlaces Add(CoilModel coil, LayEstimate lay, string of)
    {
        string key = $"{coil.Wire.Gauge}|{coil.Wire.Insulation}|{coil.Wire.OverallDiameterM}|{coil.Wire.BareDiameterM}";
        if (!_wires.TryGetValue(key, out (int Bare, int Overall, int OhmPerM) wire))
        {
            bool measured = coil.Wire.MeasuredOhmPerM is not null;
            wire = (
                Append(
                    new(
                        $"bare diameter of {coil.Wire.Gauge}",
                        "m",
                        coil.Wire.BareDiameterM,
                        Scatter.Normal,
                        "wire table: limits of the standard, or as measured"
                    )
                    {
                        Cause = "bareDiameter",
                        IsCommon = true,
                    }
                ),
                Append(
                    new(
                        $"overall diameter of {coil.Wire.Gauge}",
                        "m",
                        coil.Wire.OverallDiameterM,
                        Scatter.Normal,
                        "wire table: limits of the standard, or as measured"
                    )
                    {
                        Cause = "overallDiameter",
                        IsCommon = true,
                    }
                ),
                measured
                    ? Append(
                        new(
                            $"resistance per metre of {coil.Wire.Gauge}",
                            "Ω/m",
                            coil.Wire.MeasuredOhmPerM!.Value,
                            Scatter.Normal,
                            "measured on the spool"
                        )
                        {
                            Cause = "resistancePerLength",
                            IsCommon = true,
                        }
                    )
                    : -1
            );
            _wires[key] = wire;
        }

        int packing = Append(
            new("packing factor" + of, "1", lay.PackingFactor, Scatter.Normal, "lay simulation, scatter over seeds and guides")
            {
                Cause = "packing",
            }
        );
        int turns = Append(
            new(
                "turns" + of,
                "1",
                Estimate.Within(coil.Winding.Turns, CounterInterval, Basis.Assumed),
                Scatter.Normal,
                "counter ±0.2 %, common practice, no source"
            )
            {
                Cause = "turns",
            }
        );
        int stretch = Append(
            new(
                "stretch" + of,
                "1",
                new Estimate(
                    coil.Winding.Stretch,
                    coil.Winding.Stretch - StretchInterval,
                    coil.Winding.Stretch + StretchInterval,
                    Basis.Assumed
                ),
                Scatter.Normal,
                "±0.5 % by winding tension, our assumption"
            )
            {
                Cause = "tension",
            }
        );
        return new CoilPlaces(wire.Bare, wire.Overall, wire.OhmPerM, packing, turns, stretch);
    }

    /// <summary>The loss goes with conductivity times thickness; the field model's own error of the loss is laid on top.</summary>
    private static UncertainInput SheetInput(SheetModel sheet)
    {
        Estimate sigma = sheet.ConductivitySPerM;
        double model = SheetModelError * sigma.Value;
        double Reach(double end) => Math.Sqrt((end - sigma.Value) * (end - sigma.Value) + model * model);
        return new UncertainInput(
            $"conductivity of the {sheet.Material} {(sheet.Shape == SheetShape.Cover ? "cover" : "plate")}",
            "S/m",
            sigma with
            {
                Low = sigma.Value - Reach(sigma.Low),
                High = sigma.Value + Reach(sigma.High),
            },
            Scatter.Normal,
            "conductivity of the alloy, and 3 % for the field model"
        )
        {
            Cause = "conductivity",
            IsCommon = true,
        };
    }

    private int Append(UncertainInput input)
    {
        _all.Add(input);
        return _all.Count - 1;
    }
}

/// <summary>Places of one coil's inputs in the list of all.</summary>
internal readonly record struct CoilPlaces(int Bare, int Overall, int OhmPerM, int Packing, int Turns, int Stretch);

/// <summary>Places of the capacitances outside the windings in the list of all inputs; null for what is not there.</summary>
internal readonly record struct StrayPlaces(int? Leads, int? Walls, int? Unsaid);
