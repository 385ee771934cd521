using Coilwright.Formats.Responses;
using Coilwright.Physics.Circuit;
using Coilwright.Workshop.Entry;

namespace Coilwright.Application.Curves;

/// <summary>A person asks for gain, phase and impedance of a pickup on a load.</summary>
public sealed class RespondToLoad
{
    /// <summary>The response, and its change from another; nothing but a reason when one of them is silent.</summary>
    /// <param name="source">What was given.</param>
    /// <param name="other">What it is told against, or null.</param>
    /// <param name="frequenciesHz">Where it is computed.</param>
    /// <param name="marksHz">Where its level is told.</param>
    /// <param name="refine">Adds points round the peak.</param>
    public ResponseOutcome Respond(
        ResponseSource source,
        ResponseSource? other,
        double[] frequenciesHz,
        IReadOnlyList<double> marksHz,
        bool refine
    )
    {
        ResonancePeak? peak = source.FindPeak();
        double[] hz = refine && peak is { } top ? PickupResponse.Refined(frequenciesHz, top) : frequenciesHz;
        Response response = source.Compute(hz);
        if (response.IsSilent)
        {
            return Silent(source);
        }

        ResponseAnswer answer = new(Lines(response), peak, source.FindMinus3Db())
        {
            LevelDb = response.LowFrequencyGainDb,
            NoiseDbv = source.NoiseDbv(),
            Marks = Lines(source.Compute([.. marksHz])),
        };
        if (other is null)
        {
            return new ResponseOutcome(answer);
        }

        Response beside = other.Compute(hz);
        return beside.IsSilent ? Silent(other) : new ResponseOutcome(answer with { Against = Change(response, beside, other) });
    }

    private static ResponseChange Change(Response response, Response beside, ResponseSource other) =>
        new(
            other.Name,
            [.. beside.Points.Select((point, i) => response.Points[i].GainDb - point.GainDb)],
            other.FindPeak(),
            response.LowFrequencyGainDb - other.Compute([PickupResponse.ReferenceHz]).LowFrequencyGainDb
        );

    /// <summary>Why nothing arrives.</summary>
    internal static ResponseOutcome Silent(ResponseSource source) =>
        source.IsShut
            ? new ResponseOutcome(
                null,
                "--load",
                new Problem("volume.setting", "nothing arrives: the volume control is shut", "0", "above 0, up to 1")
            )
            : new ResponseOutcome(
                null,
                source.Name,
                new Problem(
                    "",
                    "nothing arrives at 20 Hz: a control is shut, or the pickups cancel there; gains are relative to that level"
                )
            );

    private static ResponseLine[] Lines(Response response) =>
        [.. response.Points.Select(point => new ResponseLine(point.FrequencyHz, point.GainDb, point.PhaseDegrees, point.ImpedanceOhm))];
}
