using System.CommandLine;
using Coilwright.Workshop.Pieces;

namespace Coilwright.Commands;

/// <summary>What is typed of a whole piece, at the final test and on the way back.</summary>
internal sealed class TestOptions
{
    private readonly Option<string> _resistance = ShopAction.Text("--resistance", "For example 7.43k, or open"),
        _temperature = ShopAction.Text("--temperature", "Of the piece; the room's unless said");
    private readonly Option<string> _inductance = ShopAction.Text("--inductance", "For example 2.4H"),
        _inductanceAt = ShopAction.Text("--inductance-at", "Its frequency, 1kHz unless said");
    private readonly Option<string> _quality = ShopAction.Text("--q", "Q, a plain number"),
        _qualityAt = ShopAction.Text("--q-at", "Its frequency, 1kHz unless said"),
        _ac = ShopAction.Text("--ac-resistance", "AC resistance at the frequency of Q");
    private readonly Option<string> _peak = ShopAction.Text("--peak", "Peak on the usual load, where measured"),
        _swing = ShopAction.Text("--swing", "First swing when iron comes near: up or down");
    private readonly Option<string> _poles = ShopAction.Text(
            "--poles",
            "Field over each pole in order, \"950 948 …\"; bare numbers are gauss"
        ),
        _jig = ShopAction.Text("--jig", "Distance of the probe, 1mm unless said");
    private readonly Option<string> _flaws = ShopAction.Text("--flaws", "What the eye found"),
        _instrument = ShopAction.Text("--instrument", "Which meter");

    public void AddTo(Command command)
    {
        foreach (
            Option<string> option in (Option<string>[])
                [
                    _resistance,
                    _temperature,
                    _inductance,
                    _inductanceAt,
                    _quality,
                    _qualityAt,
                    _ac,
                    _peak,
                    _swing,
                    _poles,
                    _jig,
                    _flaws,
                    _instrument,
                ]
        )
        {
            command.Options.Add(option);
        }
    }

    public TestEntry Read(ParseResult parsed, string serial, string person) =>
        new()
        {
            Id = Guid.NewGuid(),
            Serial = serial,
            Resistance = parsed.GetRequiredValue(_resistance),
            Temperature = parsed.GetRequiredValue(_temperature),
            Inductance = parsed.GetRequiredValue(_inductance),
            InductanceAt = parsed.GetRequiredValue(_inductanceAt),
            Quality = parsed.GetRequiredValue(_quality),
            QualityAt = parsed.GetRequiredValue(_qualityAt),
            AcResistance = parsed.GetRequiredValue(_ac),
            Peak = parsed.GetRequiredValue(_peak),
            Swing = parsed.GetRequiredValue(_swing),
            Poles = parsed.GetRequiredValue(_poles),
            Jig = parsed.GetRequiredValue(_jig),
            Flaws = parsed.GetRequiredValue(_flaws),
            Instrument = parsed.GetRequiredValue(_instrument),
            Person = person,
        };
}
