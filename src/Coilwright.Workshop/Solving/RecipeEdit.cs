using System.Globalization;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using Coilwright.Physics.Wire;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes.Reading;

namespace Coilwright.Workshop.Solving;

/// <summary>Changes a recipe's document and leaves everything else in it as it stands.</summary>
public sealed class RecipeEdit
{
    private static readonly JsonSerializerOptions s_written = new()
    {
        WriteIndented = true,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };
    private readonly JsonObject _root;

    public RecipeEdit(string json) => _root = JsonNode.Parse(json)!.AsObject();

    public string Json => _root.ToJsonString(s_written);

    private IEnumerable<JsonObject> Coils => _root["coils"]!.AsArray().Select(coil => coil!.AsObject());

    /// <summary>
    /// Turns of each coil. What was measured on a winding of other turns (build, capacitance) no longer holds and is taken out.
    /// </summary>
    public RecipeEdit Turns(IReadOnlyList<int> turns)
    {
        foreach ((JsonObject coil, int count) in Coils.Zip(turns))
        {
            coil["winding"]!["turns"] = count;
        }

        return this;
    }

    /// <summary>The recipe under another name.</summary>
    public RecipeEdit Named(string name)
    {
        _root["name"] = name;
        return this;
    }

    /// <summary>Every coil on a spool whose resistance was read, Ω/m at 20 °C.</summary>
    public RecipeEdit OnSpool(double ohmPerM)
    {
        foreach (JsonObject coil in Coils)
        {
            coil["wire"]!["resistancePerLength"] = ohmPerM.ToString("0.####", CultureInfo.InvariantCulture) + " Ω/m";
        }

        return this;
    }

    /// <summary>Takes out measured build and capacitance.</summary>
    public RecipeEdit WithoutMeasuredWinding()
    {
        foreach (JsonObject coil in Coils)
        {
            coil["winding"]!.AsObject().Remove("build");
            coil["winding"]!.AsObject().Remove("capacitance");
        }

        return this;
    }

    /// <summary>
    /// Wire of every coil, from the tables; a tension beyond the wire's band is brought to its middle, a pitch below its diameter opened.
    /// </summary>
    /// <returns>Words on what had to follow.</returns>
    public IReadOnlyDictionary<string, string> Wire(string gauge, string build)
    {
        WireSize size = WireCatalogue.Standard.Find(gauge) ?? throw new ArgumentException($"No wire size {gauge}.", nameof(gauge));
        Dictionary<string, string> followed = [];
        foreach (JsonObject coil in Coils)
        {
            JsonObject wire = coil["wire"]!.AsObject();
            foreach (string gone in (string[])["bareDiameter", "overallDiameter", "resistancePerLength", "build", "grade"])
            {
                wire.Remove(gone);
            }

            wire["gauge"] = size.Gauge;
            if (build.StartsWith("grade-", StringComparison.Ordinal))
            {
                wire["grade"] = int.Parse(build[6..], CultureInfo.InvariantCulture);
            }
            else
            {
                wire["build"] = build;
            }

            Follow(coil["winding"]!.AsObject(), size, build, followed);
        }

        return followed;
    }

    /// <summary>Grade of every magnetised pole and magnet; its own figures give way to the table's.</summary>
    public RecipeEdit Magnet(string grade)
    {
        IEnumerable<JsonNode?> poles = Coils.SelectMany(coil => coil["poles"]?.AsArray() ?? []);
        foreach (JsonObject part in poles.Concat(_root["magnets"]?.AsArray() ?? []).Select(part => part!.AsObject()).Where(IsMagnet))
        {
            part["material"] = grade;
            foreach (string gone in (string[])["relativePermeability", "conductivity", "polarisation"])
            {
                part.Remove(gone);
            }
        }

        return this;
    }

    public RecipeEdit Connection(string connection)
    {
        _root["connection"] = connection;
        return this;
    }

    /// <summary>A size of every bobbin. The corners of a racetrack stay half circles; the room for the winding stays.</summary>
    public RecipeEdit Bobbin(string field, double lengthM)
    {
        foreach (JsonObject bobbin in Coils.Select(coil => coil["bobbin"]!.AsObject()))
        {
            bobbin[field] = Changed(bobbin[field], lengthM);
            if (field == "coreWidth" && bobbin.ContainsKey("endRadius"))
            {
                bobbin["endRadius"] = Millimetres(lengthM / 2);
            }
        }

        return this;
    }

    /// <summary>True when the recipe has something that can be made of another magnet.</summary>
    public bool HasMagnets =>
        Coils
            .SelectMany(coil => coil["poles"]?.AsArray() ?? [])
            .Concat(_root["magnets"]?.AsArray() ?? [])
            .Any(part => IsMagnet(part!.AsObject()));

    /// <summary>A length as a recipe states it, to the micrometre.</summary>
    public static string Millimetres(double lengthM) =>
        Math.Round(lengthM * 1e3, 3).ToString("0.###", CultureInfo.InvariantCulture) + " mm";

    /// <summary>A length in place of another: its ± stays as wide as it was.</summary>
    public static string Changed(JsonNode? old, double lengthM)
    {
        string typed = old is JsonValue value && value.TryGetValue(out string? text) ? text : "";
        return SizeParser.Read(typed, Allowed.Place, unitRequired: true).Entered.HalfWidth is { } withinM
            ? $"{Millimetres(lengthM)} ± {(withinM * 1e3).ToString("0.####", CultureInfo.InvariantCulture)} mm"
            : Millimetres(lengthM);
    }

    private static bool IsMagnet(JsonObject part) => part["magnetised"]?.GetValue<string>() is { } how && how != "none";

    private static void Follow(JsonObject winding, WireSize size, string build, Dictionary<string, string> followed)
    {
        if (
            winding["tension"]?.GetValue<string>() is { } typed
            && QuantityParser.TryParse(typed, QuantityKind.Force, true, out Entered tension, out _)
            && TensionBand.For(size.Gauge) is { } band
            && (tension.Si > band.HighN || tension.Si < 0.5 * band.LowN)
        )
        {
            string text = Math.Round((band.LowGramForce + band.HighGramForce) / 2, 1).ToString("0.#", CultureInfo.InvariantCulture) + " gf";
            winding["tension"] = followed["tension"] = text;
        }

        double overallM = size.Builds[build].NominalM;
        if (
            winding["pitch"]?.GetValue<string>() is { } pitch
            && QuantityParser.TryParse(pitch, QuantityKind.Length, true, out Entered travel, out _)
            && travel.Si < overallM
        )
        {
            winding["pitch"] = followed["pitch"] = Millimetres(1.05 * overallM);
        }
    }
}
