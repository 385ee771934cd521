using System.Text.Json.Nodes;
using Coilwright.Physics.Winding;
using Coilwright.Workshop.Machines;
using Microsoft.AspNetCore.Http;

namespace Coilwright.Web.Forms;

/// <summary>The form of a winder: everything that a winder's file can hold has its field here.</summary>
public static class MachineForm
{
    /// <summary>Field of the kind.</summary>
    public const string Kind = "kind";

    /// <summary>Kinds, with what a person reads of each.</summary>
    public static IReadOnlyList<(string Word, string Label)> Kinds { get; } =
    [
        (MachineReader.WordOf(MachineKind.HandGuided), "a hand guides the wire, a counter counts"),
        (MachineReader.WordOf(MachineKind.Gear), "a screw guides it, driven through change gears"),
        (MachineReader.WordOf(MachineKind.Stepper), "a stepper guides it, so many steps a turn"),
        (MachineReader.WordOf(MachineKind.Cam), "a cam guides it"),
        (MachineReader.WordOf(MachineKind.Timed), "no counter: it is wound for a time"),
    ];

    /// <summary>What every winder has.</summary>
    public static IReadOnlyList<SettingField> Every { get; } =
    [
        new("spindles", "Spindles", SettingKind.Number, Usual: "1") { Changes = "Coils wound at once." },
        new("facesYou", "Side that faces you", Usual: "top")
        {
            Choices = [("top", "the coil's top"), ("bottom", "the coil's bottom")],
            Changes = "Which way the spindle turns for a direction, seen from its free end.",
        },
        new("speed.low", "Slowest speed", SettingKind.Quantity, "rpm") { Example = "300 rpm" },
        new("speed.high", "Fastest speed", SettingKind.Quantity, "rpm") { Example = "1500 rpm" },
        new("speed.steps", "Or only these speeds", SettingKind.Quantities, "rpm") { Example = "400; 800; 1200 rpm" },
        new("tension.low", "Least pull of the brake", SettingKind.Quantity, "gf") { Example = "4 gf" },
        new("tension.high", "Most pull of the brake", SettingKind.Quantity, "gf") { Example = "40 gf" },
    ];

    /// <summary>What a counter has shown.</summary>
    public static IReadOnlyList<SettingField> Counter { get; } =
    [
        new("counter.turns", "Turns by the mark", SettingKind.Number) { Example = "100.6" },
        new("counter.counted", "Counter ran on by", SettingKind.Number) { Example = "100" },
    ];

    /// <summary>What moves the guide, by kind.</summary>
    public static IReadOnlyList<(string Kind, string Title, IReadOnlyList<SettingField> Fields)> ByKind { get; } =
    [
        (
            MachineReader.WordOf(MachineKind.Gear),
            "Screw and change gears",
            Of(
                MachineReader.WordOf(MachineKind.Gear),
                new("traverse.screwLead", "Travel of the screw in one turn", SettingKind.Quantity, "mm") { Example = "1 mm" },
                new("traverse.wheels", "Teeth of the wheels at hand", SettingKind.Numbers)
                {
                    Example = "20 24 30 40 60",
                    Changes = "A wheel that is there twice is named twice.",
                },
                new("traverse.stages", "Pairs behind each other", SettingKind.Number, Usual: "1") { Choices = [("2", "2")] }
            )
        ),
        (
            MachineReader.WordOf(MachineKind.Stepper),
            "Stepper",
            Of(
                MachineReader.WordOf(MachineKind.Stepper),
                new("traverse.screwLead", "Travel of the screw in one turn", SettingKind.Quantity, "mm") { Example = "1 mm" },
                new("traverse.stepsPerTurn", "Steps of one turn of the screw", SettingKind.Number) { Example = "800" },
                new("traverse.travelPerStep", "Or travel of one step", SettingKind.Quantity, "mm") { Example = "0.0025 mm" }
            )
        ),
        (
            MachineReader.WordOf(MachineKind.Timed),
            "Clock",
            Of(
                MachineReader.WordOf(MachineKind.Timed),
                new("timed.speedSpread", "Spread of its speed", SettingKind.Quantity, "%", Percent(ClockStop.UsualSpeedSpread))
                {
                    Origin = "our assumption",
                },
                new(
                    "timed.stopSpread",
                    "Spread of start and stop",
                    SettingKind.Quantity,
                    "s",
                    FormattableString.Invariant($"{ClockStop.UsualStopS} s")
                )
                {
                    Origin = "our assumption",
                }
            )
        ),
    ];

    /// <summary>Cams that a winder has.</summary>
    public static SettingRows Cams { get; } =
        new(
            "traverse.cams",
            "cam",
            [
                new("name", "Name of the cam"),
                new("stroke", "Stroke", SettingKind.Quantity, "mm") { Example = "11 mm" },
                new("turnsPerStroke", "Turns in one stroke", SettingKind.Number) { Example = "58" },
                new("motion", "Motion") { Choices = [("even", "even"), ("harmonic", "slows at the ends (eccentric)")] },
            ]
        );

    /// <summary>The shop's own tension on it, by gauge.</summary>
    public static SettingRows Tensions { get; } =
        new(
            "ownTensions",
            "gauge",
            [new("gauge", "Gauge") { Example = "AWG 42" }, new("tension", "Tension", SettingKind.Quantity, "gf") { Example = "14 gf" }]
        );

    /// <summary>A winder's document with the form's fields put in; notes, and all else that no field shows, stay.</summary>
    public static JsonObject Apply(JsonObject document, IFormCollection form)
    {
        string kind = form[Kind].ToString();
        document["name"] = form["name"].ToString().Trim();
        document[Kind] = kind;
        SettingsForm.Put(document, Every, form);
        SettingsForm.Put(document, Tensions, form);
        if (kind == MachineReader.WordOf(MachineKind.Timed))
        {
            document.Remove("counter");
        }
        else
        {
            SettingsForm.Put(document, Counter, form);
            document.Remove("timed");
        }

        PutTraverse(document, kind, form);
        return document;
    }

    /// <summary>Puts in what belongs to the kind, and takes out what belongs to another.</summary>
    private static void PutTraverse(JsonObject document, string kind, IFormCollection form)
    {
        document.Remove("traverse");
        if (kind == MachineReader.WordOf(MachineKind.Cam))
        {
            SettingsForm.Put(document, Cams, form);
        }

        SettingsForm.Put(document, ByKind.Where(one => one.Kind == kind).SelectMany(one => one.Fields), form);
    }

    private static string Percent(double part) => FormattableString.Invariant($"{part * 100:0.##} %");

    /// <summary>Kinds share fields of the document; each has fields of its own in the form.</summary>
    private static IReadOnlyList<SettingField> Of(string kind, params SettingField[] fields) =>
        [.. fields.Select(field => field with { Name = $"{kind}.{field.Path}" })];
}
