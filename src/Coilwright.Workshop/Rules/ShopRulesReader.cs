using Coilwright.Workshop.ControlCharts;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Instruments;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Recipes.Reading;
using Coilwright.Workshop.Steps;

namespace Coilwright.Workshop.Rules;

/// <summary>Reads the shop's rules (format coilwright.rules/1) and tells every mistake at once.</summary>
public static class ShopRulesReader
{
    public const string Format = "coilwright.rules/1";

    /// <summary>So many charts may have limits of their own.</summary>
    public const int MostChartLimits = 200;

    /// <summary>Rules of a shop that has stated none: everything usual.</summary>
    public const string Usual = """
        {
          "format": "coilwright.rules/1",
          "serials": "{yy}{ww}-{n:000}"
        }
        """;

    internal static readonly Limits Bath = new(QuantityKind.Temperature, 30, 120, "°C", "65 °C");
    internal static readonly Limits InkTime = new(QuantityKind.Duration, 60, 60 * 86400, "h", "8 h");
    internal static readonly Limits Room = new(QuantityKind.Temperature, 0, 60, "°C", "20 °C");
    internal static readonly Limits Part = new(QuantityKind.Fraction, 1e-4, 1, "%", "3 %");

    /// <summary>The rules, or every problem.</summary>
    public static ReadOutcome<ShopRules> Read(string json) => JsonDocumentReader.Read(json, Format, Whole);

    /// <summary>As <see cref="Read"/>, of a file that was handed in: the point alone is decimal there.</summary>
    public static ReadOutcome<ShopRules> ReadFile(string json) => JsonDocumentReader.Read(json, Format, Whole, pointOnly: true);

    private static ShopRules Whole(JsonFields fields)
    {
        fields.Free("notes", "tags");
        ShopRules usual = new();
        SerialPattern serials = fields.Text("serials") is { Length: > 0 } pattern ? new SerialPattern(pattern) : usual.Serials;
        foreach (Problem problem in serials.Check())
        {
            fields.Problems.Add(fields.PathOf("serials"), problem.Message, problem.Understood, problem.Allowed);
        }

        Ink ink = fields.Object("ink", InkOf) ?? new Ink(usual.PotLife, usual.FullCure, usual.Cure);
        return usual with
        {
            Serials = serials,
            Zone = Zone(fields),
            BathLimitsC = Table(fields, "bathLimits", "material", "limit", Bath),
            PotLife = ink.PotLife,
            FullCure = ink.FullCure,
            Cure = ink.Rule,
            TestTolerances = Tolerances(fields),
            TestNeeds = Needs(fields),
            GaussSpread = fields.Optional("gaussSpread", Part)?.Si ?? usual.GaussSpread,
            ChargeTolerance = fields.Optional("chargeTolerance", Part) is { IsKnown: true } charge ? charge.Si : null,
            Sizes = fields.Object("sizes", SizeRulesReader.Read) ?? usual.Sizes,
            LeadColours = fields.Objects(
                "leadColours",
                lead => new LeadColour(
                    lead.Text("coil", "*"),
                    lead.Word("end", ["start", "finish", "ground"], required: true) ?? "",
                    lead.Text("colour", "grey")
                ),
                60
            ),
            Instruments = InstrumentsOf(fields),
            ChartLimits = fields.Objects("chartLimits", LimitsOf, MostChartLimits),
        };
    }

    private static IReadOnlyList<ShopInstrument> InstrumentsOf(JsonFields fields)
    {
        IReadOnlyList<ShopInstrument> all = fields.Objects("instruments", ShopInstrument.Read, ShopInstrument.Most);
        for (int at = 0; at < all.Count; at++)
        {
            if (all[at] is { } one && all.Take(at).Any(other => other is not null && NameKey.Same(other.Name, one.Name)))
            {
                fields.Problems.Add(fields.PathOf($"instruments[{at}].name"), "two instruments have this name", $"\"{one.Name}\"");
            }
        }

        return all;
    }

    private static ChartLimits LimitsOf(JsonFields fields) =>
        new(
            fields.Text("recipe", "Harbour bridge"),
            fields.Text("coil") is { Length: > 0 } coil ? coil : "*",
            fields.Word("quantity", ChartSettings.Quantities) ?? ChartSettings.Quantities[0],
            fields.Text("since", "H-12/C-041"),
            fields.Text("because", "new spool"),
            fields.Number("coils", 2, 10_000, whole: true) is { } coils ? (int)coils : null
        );

    private static TimeZoneInfo Zone(JsonFields fields)
    {
        string name = fields.Text("timeZone");
        if (name.Length == 0)
        {
            return TimeZoneInfo.Local;
        }

        if (TimeZoneInfo.TryFindSystemTimeZoneById(name, out TimeZoneInfo? zone))
        {
            return zone;
        }

        fields.Problems.Add(
            fields.PathOf("timeZone"),
            "this computer knows no such time zone",
            $"\"{name}\"",
            "a name of the time-zone database, for example \"Europe/Lisbon\""
        );
        return TimeZoneInfo.Local;
    }

    private static Ink InkOf(JsonFields fields)
    {
        ShopRules usual = new();
        TimeSpan Time(string name, TimeSpan otherwise) =>
            fields.Optional(name, InkTime) is { IsKnown: true } entered ? TimeSpan.FromSeconds(entered.Si) : otherwise;
        double sheetC = fields.Optional("sheetTemperature", Room) is { IsKnown: true } sheet ? sheet.Si : usual.Cure.SheetC;
        bool doubles = fields.Word("warmth", ["doubles per 10 °C", "as it stands"]) != "as it stands";
        return new Ink(Time("potLife", usual.PotLife), Time("fullCure", usual.FullCure), new CureRule(doubles, sheetC));
    }

    private static Dictionary<string, double> Tolerances(JsonFields fields)
    {
        Dictionary<string, double> all = new(ShopRules.UsualTolerances, StringComparer.Ordinal);
        fields.Object("testTolerances", inner =>
        {
            foreach (string quantity in ShopRules.UsualTolerances.Keys)
            {
                if (inner.Optional(quantity, Part) is { IsKnown: true } part)
                {
                    all[quantity] = part.Si;
                }
            }

            return inner;
        });
        return all;
    }

    private static IReadOnlyList<string> Needs(JsonFields fields)
    {
        if (!fields.Has("testNeeds"))
        {
            return new ShopRules().TestNeeds;
        }

        return fields.Items(
            "testNeeds",
            (item, path) =>
            {
                string? word = item.ValueKind == System.Text.Json.JsonValueKind.String ? item.GetString() : null;
                if (word is null || !ShopRules.UsualTolerances.ContainsKey(word))
                {
                    fields.Problems.Add(
                        path,
                        "not a quantity of the final test",
                        JsonFields.Told(item),
                        string.Join(", ", ShopRules.UsualTolerances.Keys)
                    );
                }

                return word ?? "";
            },
            10
        );
    }

    private static Dictionary<string, double> Table(JsonFields fields, string name, string key, string value, Limits limits)
    {
        Dictionary<string, double> all = new(StringComparer.OrdinalIgnoreCase);
        foreach (Row? row in fields.Objects(name, inner => new Row(inner.Text(key, "abs"), inner.Required(value, limits).Si), 100))
        {
            if (row is not null && !all.TryAdd(row.Key, row.Value))
            {
                fields.Problems.Add(fields.PathOf(name), $"this {key} is given twice; keep one of them", row.Key);
            }
        }

        return all;
    }

    private sealed record Ink(TimeSpan PotLife, TimeSpan FullCure, CureRule Rule);

    private sealed record Row(string Key, double Value);
}
