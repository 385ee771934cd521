using System.CommandLine;
using Coilwright.Input;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Instruments;

namespace Coilwright.Commands;

/// <summary>Which instrument a command means: its profile and where it hangs.</summary>
internal sealed class MeterOptions
{
    /// <summary>Field of a profile that is not there.</summary>
    private const string Unknown = "PROFILE";

    private readonly Argument<string> _profile = new(Unknown)
    {
        Description = "A profile that came with the program (meter list), or a file (coilwright.meter/1); - reads standard input",
    };
    private readonly AddressOptions _address = new("5025 unless said");

    /// <summary>Adds them to a command.</summary>
    public void AddTo(Command command)
    {
        command.Add(_profile);
        _address.AddTo(command);
    }

    /// <summary>The instrument that was named.</summary>
    /// <exception cref="WrongInputException">There is none of that name, its profile is wrong, or it hangs nowhere; all of it is
    /// told.</exception>
    public async Task<(MeterProfile Profile, MeterAddress Address)> ReadAsync(ParseResult parsed, CancellationToken cancel)
    {
        string named = parsed.GetRequiredValue(_profile);
        ReadOutcome<MeterAddress> address = _address.Read(parsed);
        Problem[] wrong = [.. address.Problems];
        if (address.Problems.Count == 0 && address.Value is null)
        {
            wrong = [new Problem("--tcp, --serial, --usbtmc", "where does the instrument hang?", Allowed: "one of the three")];
        }

        ReadOutcome<MeterProfile> profile = await ProfileAsync(named, cancel).ConfigureAwait(false);
        if (address.Value is MeterAddress.UsbTmc && profile.Value is { Ask.Length: 0 })
        {
            wrong = [new Problem("--usbtmc", "such an instrument sends nothing unasked, and the profile has no \"ask\"")];
        }

        if (wrong.Length + profile.Problems.Count == 0)
        {
            return (profile.Value!, address.Value!);
        }

        bool isFile = profile.Problems.Any(one => one.Field != Unknown);
        throw new WrongInputException(isFile ? named : "", [.. profile.Problems, .. wrong]);
    }

    private static async Task<ReadOutcome<MeterProfile>> ProfileAsync(string named, CancellationToken cancel)
    {
        if (MeterProfiles.Find(named) is { } own)
        {
            return new ReadOutcome<MeterProfile>(own, []);
        }

        if (named == "-" || File.Exists(named) || named.EndsWith(".json", StringComparison.OrdinalIgnoreCase))
        {
            return MeterProfileReader.Read(await InputFile.ReadAsync(named, cancel).ConfigureAwait(false));
        }

        string known = string.Join(", ", MeterProfiles.All.Select(one => one.Key));
        return new ReadOutcome<MeterProfile>(
            null,
            [new Problem(Unknown, "no such profile, and no such file", $"\"{named}\"", known + ", or a file")]
        );
    }
}
