using System.Text.Json.Nodes;
using Coilwright.Workshop.ControlCharts;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes.Sizes;
using Coilwright.Workshop.Recipes.Starting;
using Coilwright.Workshop.Rules;
using Microsoft.AspNetCore.Http;

namespace Coilwright.Web.Forms;

/// <summary>Rules that belong together.</summary>
/// <param name="Title">What they are about.</param>
/// <param name="About">What they are good for, in a sentence.</param>
/// <param name="Fields">Single rules.</param>
/// <param name="Rows">A list of rules; null for none.</param>
public sealed record RuleGroup(string Title, string About, IReadOnlyList<SettingField> Fields, SettingRows? Rows = null);

/// <summary>The form of the shop's rules: every rule that a rules file can hold has its field here.</summary>
public static class RulesForm
{
    /// <summary>Where our own figures come from that no source and no practice backs.</summary>
    private const string OurAssumption = "our assumption";

    /// <summary>The needs of a final test, as ticks.</summary>
    public const string Needs = "testNeeds";

    /// <summary>Quantities that a final test may need.</summary>
    public static IReadOnlyList<string> Quantities { get; } = [.. ShopRules.UsualTolerances.Keys];

    /// <summary>All groups, in the order of the work.</summary>
    public static IReadOnlyList<RuleGroup> Groups { get; } =
    [
        new(
            "Serials and clock",
            "How pieces are numbered, and what time the shop's papers and clocks show.",
            [
                new("serials", "Pattern of serials", Usual: "{yy}{ww}-{n:000}")
                {
                    Origin = OurAssumption,
                    Changes =
                        "Numbers of pieces from now on. {yyyy}, {yy}, {mm}, {dd}, {ww} week, {ddd} day of the year, {recipe}, and one "
                        + "running number {n} or {n:000}.",
                },
                new("timeZone", "Time zone", Usual: "this computer's", Changes: "Times on pages and papers, for example Europe/Lisbon."),
            ]
        ),
        new(
            "Potting",
            "Hottest bath that each plastic bears. Published figures disagree, so there is none of ours: test a spare bobbin.",
            [],
            new(
                "bathLimits",
                "plastic",
                [
                    new("material", "Material of the bobbin") { Example = "ABS" },
                    new("limit", "Hottest bath", SettingKind.Quantity, "°C") { Example = "65 °C" },
                ]
            )
        ),
        new(
            "Marking ink",
            "From the sheet of your ink: when a mix must be thrown away, and when a mark may be touched.",
            [
                new("ink.potLife", "Pot life", SettingKind.Quantity, "h", "8 h") { Origin = StartingRecipes.Origin },
                new("ink.fullCure", "Full cure", SettingKind.Quantity, "d", "6 d") { Origin = StartingRecipes.Origin },
                new("ink.sheetTemperature", "Temperature of the sheet", SettingKind.Quantity, "°C", "20 °C")
                {
                    Origin = StartingRecipes.Origin,
                },
                new("ink.warmth", "What warmth does", Usual: "doubles per 10 °C")
                {
                    Origin = StartingRecipes.Origin,
                    Choices = [("doubles per 10 °C", "cures twice as fast per 10 °C"), ("as it stands", "nothing: times as on the sheet")],
                },
            ]
        ),
        new(
            "Final test",
            "How far a piece may lie from the golden piece and still pass.",
            [
                .. ShopRules.UsualTolerances.Select(one => new SettingField(
                    "testTolerances." + one.Key,
                    ProblemSentences.Sentence(KeyLabels.Of(one.Key)).TrimEnd('.'),
                    SettingKind.Quantity,
                    "%",
                    FormattableString.Invariant($"{one.Value * 100:0.##} %")
                )
                {
                    Origin = OurAssumption,
                }),
            ]
        ),
        new(
            "Magnets",
            "How even the poles must be, and how near a charge must come to its level.",
            [
                new("gaussSpread", "Spread of the poles' fields", SettingKind.Quantity, "%", "10 %") { Origin = OurAssumption },
                new("chargeTolerance", "Deviation of a charge from its level", SettingKind.Quantity, "%")
                {
                    Changes = "Without it a level is met as entered, and the field at the final test is shown and not judged.",
                },
            ]
        ),
        new(
            "Sizes of parts",
            "How well a length is known for which a recipe states no ±: 95 of 100 lie within; 0 mm takes it as exact. "
                + "A recipe says how its parts are made.",
            [
                Within("measured", "Measured by caliper", SizeRules.Usual.MeasuredM),
                Within("moulded", "Drawn and moulded", SizeRules.Usual.MouldedM),
                Within("byHand", "Drawn and built by hand", SizeRules.Usual.ByHandM),
                Within("common", "Nothing said", SizeRules.Usual.CommonM),
                Within("clearance", "Clearance to the strings", SizeRules.Usual.ClearanceM),
                Part(
                    "mostPart",
                    "Of a short length at most",
                    SizeRules.Usual.MostPart,
                    "Thin sheet and rods, which come closer than bobbins."
                ),
                Part("mouldedShare", "From piece to piece, moulded", SizeRules.Usual.MouldedShare, Share),
                Part("byHandShare", "From piece to piece, by hand", SizeRules.Usual.ByHandShare, Share),
                Part("commonShare", "From piece to piece, nothing said", SizeRules.Usual.CommonShare, Share),
            ]
        ),
        new(
            "Lead colours",
            "Your own colours, printed on the wiring sheet.",
            [],
            new(
                "leadColours",
                "lead",
                [
                    new("coil", "Coil, or * for any"),
                    new("end", "End") { Choices = [("start", "start"), ("finish", "finish"), ("ground", "ground")] },
                    new("colour", "Colour") { Example = "ochre" },
                ]
            )
        ),
        new(
            "Limits of charts taken anew",
            "From which coil on the frozen limits of a chart count. The charts page makes these too.",
            [],
            new(
                "chartLimits",
                "chart",
                [
                    new("recipe", "Recipe") { Example = "Harbour bridge" },
                    new("coil", "Coil, or * for any"),
                    new("quantity", "Quantity") { Choices = [.. ChartSettings.Quantities.Select(key => (key, KeyLabels.Of(key)))] },
                    new("since", "From batch/tag") { Example = "H-12/H-041" },
                    new("because", "Why") { Example = "new spool" },
                    new("coils", "From so many coils", SettingKind.Number, Usual: "20"),
                ]
            )
        ),
    ];

    private const string Share = "Which part of the ± differs within one batch.";

    private static SettingField Within(string key, string label, double usualM) =>
        new("sizes." + key, label, SettingKind.Quantity, "mm", FormattableString.Invariant($"{usualM * 1e3:0.##} mm"))
        {
            Origin = OurAssumption,
        };

    private static SettingField Part(string key, string label, double usual, string changes) =>
        new("sizes." + key, label, SettingKind.Quantity, "%", FormattableString.Invariant($"{usual * 100:0.##} %"))
        {
            Origin = OurAssumption,
            Changes = changes,
        };

    /// <summary>What a final test needs by a document; the usual where it states none.</summary>
    public static IReadOnlyList<string> NeedsOf(JsonNode? document) =>
        document?[Needs] is JsonArray needs ? [.. needs.Select(need => $"{need}")] : new ShopRules().TestNeeds;

    /// <summary>The rules with the form's fields put in; notes, and all else that no field shows, stay.</summary>
    public static JsonObject Apply(string json, IFormCollection form)
    {
        JsonObject document = JsonNode.Parse(json)!.AsObject();
        foreach (RuleGroup group in Groups)
        {
            SettingsForm.Put(document, group.Fields, form);
            if (group.Rows is { } rows)
            {
                SettingsForm.Put(document, rows, form);
            }
        }

        string[] needs = [.. form[Needs].OfType<string>().Where(Quantities.Contains)];
        if (document.ContainsKey(Needs) || !needs.SequenceEqual(new ShopRules().TestNeeds))
        {
            document[Needs] = new JsonArray([.. needs.Select(need => JsonValue.Create(need))]);
        }

        return document;
    }
}
