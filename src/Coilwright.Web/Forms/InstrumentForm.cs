using System.Text.Json;
using System.Text.Json.Nodes;
using Coilwright.Workshop.Entry;

namespace Coilwright.Web.Forms;

/// <summary>What came of trying an instrument.</summary>
/// <param name="Name">Which.</param>
/// <param name="Raw">The line as it came; empty when none did.</param>
/// <param name="Understood">The reading; empty when there is none.</param>
/// <param name="Note">What is wrong or to be known.</param>
public sealed record InstrumentTrial(string Name, string Raw, string Understood, string Note);

/// <summary>An instrument as typed into its form.</summary>
internal static class InstrumentForm
{
    /// <summary>Choices of where it hangs, with their words.</summary>
    public static IReadOnlyList<(string Key, string Words, string Example)> Places { get; } =
    [
        ("tcp", "on the network", "192.168.1.20:5025"),
        ("serial", "on a serial line of the computer that serves", "/dev/ttyUSB0"),
        ("usbtmc", "on USB of the computer that serves", "/dev/usbtmc0"),
        ("", "on a bench computer, which passes its readings on", ""),
    ];

    /// <summary>The instrument as it stands in the shop's rules, or what is wrong with the form.</summary>
    public static (JsonObject? Instrument, IReadOnlyList<Problem> Problems) Read(FormValues typed)
    {
        List<Problem> problems = [];
        string name = typed["name"].Trim(),
            place = typed["place"],
            address = typed["address"].Trim();
        if (name.Length is 0 or > 200)
        {
            problems.Add(new Problem("name", "what is the instrument called?", Allowed: "1 to 200 letters"));
        }

        if (place.Length > 0 && address.Length == 0)
        {
            problems.Add(new Problem("address", "where is it?", Allowed: Places.FirstOrDefault(one => one.Key == place).Example));
        }

        JsonNode? profile = ProfileOf(typed, problems);
        if (problems.Count > 0)
        {
            return (null, problems);
        }

        JsonObject instrument = new() { ["name"] = name, ["profile"] = profile };
        if (place.Length > 0)
        {
            instrument[place] = address;
        }

        return (instrument, []);
    }

    /// <summary>A profile of the shop's own wins over the one that is chosen.</summary>
    private static JsonNode? ProfileOf(FormValues typed, List<Problem> problems)
    {
        string own = typed["own"].Trim();
        if (own.Length == 0)
        {
            return JsonValue.Create(typed["profile"]);
        }

        try
        {
            return JsonNode.Parse(own);
        }
        catch (JsonException)
        {
            problems.Add(new Problem("own", "this is no profile: a file in the form that Hook up a meter shows is needed"));
            return null;
        }
    }
}
