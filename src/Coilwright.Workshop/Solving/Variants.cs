using Coilwright.Analysis.Solving;
using Coilwright.Physics;
using Coilwright.Physics.Wire;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Workshop.Solving;

/// <summary>The whole pickups and wires that a question allows; the recipe itself comes first in both.</summary>
internal sealed class Variants
{
    /// <summary>Values tried of a size that may be anything between two ends.</summary>
    private const int Steps = 7;

    /// <summary>How far a size is varied when no ends are given.</summary>
    private const double UsualPart = 0.2;

    /// <summary>Gauges tried to either side, in half sizes of AWG or steps of the metric series.</summary>
    private const int UsualGauges = 6;

    internal static readonly string[] Grades = ["alnico-2", "alnico-3", "alnico-4", "alnico-5", "alnico-8", "ferrite", "neodymium"];

    private readonly Recipe _recipe;
    private readonly string _baseJson;
    private readonly List<(string Json, PickupModel Model, IReadOnlyDictionary<string, string> Edits)> _families = [];

    public Variants(Recipe recipe, IReadOnlyList<Varied> vary, IReadOnlyDictionary<Choice, (double Low, double High)>? around = null)
    {
        _recipe = recipe;
        bool rewound = vary.Any(one => one.What is Choice.Turns or Choice.Gauge or Choice.Build);
        bool measured = recipe.Coils.Any(coil => coil.Winding.Build is not null || coil.Winding.Capacitance is not null);
        _baseJson = rewound && measured ? new RecipeEdit(recipe.Json).WithoutMeasuredWinding().Json : recipe.Json;
        if (rewound && measured)
        {
            Notes.Add("the measured build or capacitance holds for the winding it was measured on, so it was left out here");
        }

        Add([]);
        foreach (Varied one in vary.Where(one => one.What is not (Choice.Turns or Choice.Gauge or Choice.Build)))
        {
            Cross(recipe, one, around?.GetValueOrDefault(one.What));
        }

        Wires = WiresOf(recipe, vary.FirstOrDefault(one => one.What == Choice.Gauge), vary.FirstOrDefault(one => one.What == Choice.Build));
    }

    public List<string> Notes { get; } = [];
    public IReadOnlyList<PickupModel> Models => [.. _families.Select(family => family.Model)];
    public IReadOnlyList<WireChoice> Wires { get; }

    /// <summary>Sizes of a family, by the field's name in the recipe, m.</summary>
    public double? SizeOf(int family, Choice what) =>
        _families[family].Edits.TryGetValue(Field(what), out string? text)
        && QuantityParser.TryParse(text, QuantityKind.Length, true, out Entered entered, out _)
            ? entered.Si
            : null;

    /// <summary>The recipe of a design, and what was changed in it.</summary>
    public (string Json, IReadOnlyDictionary<string, object> Changes) Write(Design design, IReadOnlyList<double> baseTurns)
    {
        Dictionary<string, object> changes = [];
        RecipeEdit edit = new(_families[design.Family].Json);
        foreach ((string name, string text) in _families[design.Family].Edits)
        {
            changes[name] = text;
        }

        bool moved = design.Turns.Zip(baseTurns).Any(pair => Math.Abs(pair.First - pair.Second) > 1e-9);
        if (moved || Wires.Count > 1 || changes.Count == 0)
        {
            edit.Turns(design.Turns);
            changes["turns"] = design.Turns.Distinct().Count() == 1 ? design.Turns[0] : design.Turns;
        }

        WireChoice wire = Wires[design.Wire];
        if (Wires.Count > 1)
        {
            changes["gauge"] = wire.Gauge;
            changes["build"] = wire.Build;
        }

        if (wire.Model is not null)
        {
            foreach ((string name, string text) in edit.Wire(wire.Gauge, wire.Build))
            {
                changes[name] = text;
            }
        }

        return (edit.Json, changes);
    }

    internal static string Field(Choice what) =>
        what switch
        {
            Choice.Magnet => "magnet",
            Choice.Connection => "connection",
            Choice.WindingHeight => "windingHeight",
            Choice.CoreWidth => "coreWidth",
            _ => "coreLength",
        };

    /// <summary>Every family so far, with every value of one more choice beside its own.</summary>
    private void Cross(Recipe recipe, Varied one, (double Low, double High)? around)
    {
        string[] values = [.. Values(recipe, one, around)];
        foreach ((string _, PickupModel _, IReadOnlyDictionary<string, string> edits) in _families.ToArray())
        {
            foreach (string value in values)
            {
                Add(new Dictionary<string, string>(edits) { [Field(one.What)] = value });
            }
        }
    }

    private static IEnumerable<string> Values(Recipe recipe, Varied one, (double Low, double High)? around)
    {
        if (one.What == Choice.Connection)
        {
            return recipe.Coils.Count < 2
                ? []
                : (one.Listed ?? ["series", "parallel"]).Where(name =>
                    !string.Equals(name, recipe.Connection.ToString(), StringComparison.OrdinalIgnoreCase)
                );
        }

        if (one.What == Choice.Magnet)
        {
            return new RecipeEdit(recipe.Json).HasMagnets ? one.Listed ?? Grades : [];
        }

        (double usualLow, double usualHigh) = UsualSize(SizeOf(recipe.Coils[0].Bobbin, one.What));
        (double low, double high) = around is { High: > 0 } near ? near : (one.Low ?? usualLow, one.High ?? usualHigh);
        return Enumerable.Range(0, Steps).Select(k => RecipeEdit.Millimetres(low + (high - low) * k / (Steps - 1))).Distinct();
    }

    /// <summary>
    /// Adds a family unless the recipe that it makes is impossible (a rod wider than its former) or the same as one before.
    /// </summary>
    private void Add(Dictionary<string, string> edits)
    {
        RecipeEdit edit = new(_baseJson);
        foreach ((string field, string value) in edits)
        {
            _ = field switch
            {
                "magnet" => edit.Magnet(value),
                "connection" => edit.Connection(value),
                _ when QuantityParser.TryParse(value, QuantityKind.Length, true, out Entered size, out _) => edit.Bobbin(field, size.Si),
                _ => edit,
            };
        }

        string json = edit.Json;
        if (!_families.Any(family => family.Json == json) && RecipeReader.Read(json) is { Ok: true, Value: { } recipe })
        {
            Recipe known = recipe with { SizeRules = _recipe.SizeRules, Learning = _recipe.Learning };
            _families.Add((json, RecipeModelBuilder.ToModel(known), edits));
        }
    }

    /// <summary>The size of a wire, or the nearest to it, and those about it that are looked at when no list is given.</summary>
    internal static (WireSize Own, IReadOnlyList<WireSize> Near) WiresNear(RecipeWire own)
    {
        IReadOnlyList<WireSize> sizes = WireCatalogue.Standard.Sizes;
        WireSize size =
            own.Gauge.Length > 0
                ? WireCatalogue.Standard.Find(own.Gauge)!
                : sizes.Where(found => !found.IsMetric).MinBy(found => Math.Abs(found.Bare.NominalM - own.BareDiameter!.Value.Si))!;
        WireSize[] alike = [.. sizes.Where(found => found.IsMetric == size.IsMetric)];
        int at = Array.IndexOf(alike, size);
        return (size, alike[Math.Max(0, at - UsualGauges)..Math.Min(alike.Length, at + UsualGauges + 1)]);
    }

    /// <summary>Ends between which a size is looked at when none are given, m.</summary>
    internal static (double Low, double High) UsualSize(double nowM) => (nowM * (1 - UsualPart), nowM * (1 + UsualPart));

    /// <summary>A size of the bobbin that may be varied, m.</summary>
    internal static double SizeOf(RecipeBobbin bobbin, Choice what) =>
        what switch
        {
            Choice.WindingHeight => bobbin.WindingHeight.Si,
            Choice.CoreWidth => bobbin.CoreWidth.Si,
            _ => bobbin.CoreLength.Si,
        };

    private static List<WireChoice> WiresOf(Recipe recipe, Varied? gauge, Varied? build)
    {
        RecipeWire own = recipe.Coils[0].Wire;
        List<WireChoice> wires = [new(own.Gauge, own.Build, null)];
        if (gauge is null && build is null)
        {
            return wires;
        }

        (WireSize size, IReadOnlyList<WireSize> near) = WiresNear(own);
        IEnumerable<WireSize> chosen = gauge switch
        {
            null => [size],
            { Listed: { } listed } => listed.Select(name => WireCatalogue.Standard.Find(name)!),
            _ => near,
        };
        foreach (WireSize found in chosen)
        {
            IEnumerable<string> builds = build is null
                ? [NearestBuild(found, own.Build)]
                : found.Builds.Keys.Where(name => build.Listed is null ? name is not "quad" : build.Listed.Contains(name));
            wires.AddRange(
                builds
                    .Where(name =>
                        !(
                            found.Gauge == own.Gauge
                            && name == own.Build
                            && own.BareDiameter is null
                            && own.OverallDiameter is null
                            && own.ResistancePerLength is null
                        )
                    )
                    .Select(name => new WireChoice(found.Gauge, name, WireCatalogue.Standard.ModelFor(found.Gauge, name, own.Insulation)))
            );
        }

        bool ownAllowed = (gauge?.Listed?.Contains(size.Gauge) ?? true) && (build?.Listed?.Contains(own.Build) ?? true);
        return ownAllowed || wires.Count == 1 ? wires : wires[1..];
    }

    private static string NearestBuild(WireSize size, string wanted)
    {
        if (size.Builds.ContainsKey(wanted))
        {
            return wanted;
        }

        if (size.IsMetric == wanted.StartsWith("grade", StringComparison.Ordinal))
        {
            return size.Builds.Keys.Last();
        }

        string? second = wanted is "heavy" or "grade-2" ? size.Builds.Keys.Skip(1).FirstOrDefault() : null;
        return second ?? size.Builds.Keys.First();
    }
}
