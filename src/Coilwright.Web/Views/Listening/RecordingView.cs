using System.Globalization;
using Coilwright.Application.Listening;

namespace Coilwright.Web.Views.Listening;

/// <summary>A recording and the same through another pickup, as their page tells them.</summary>
/// <param name="Heard">The two sounds.</param>
public sealed record RecordingView(HeardRecording Heard)
{
    /// <summary>The sounds to turn to.</summary>
    public IReadOnlyList<ListenVoice> Voices { get; } =
    [
        new ListenVoice("A", $"as recorded with {Heard.From}", $"/listen/recording/a.wav?sound={Heard.Id}", "A as recorded.wav"),
        new ListenVoice("B", $"as with {Heard.To}", $"/listen/recording/b.wav?sound={Heard.Id}", "B through another pickup.wav"),
    ];

    /// <summary>What was done to the levels, and what one has more than the other.</summary>
    public string Level { get; } =
        string.Create(
            CultureInfo.InvariantCulture,
            $"{(Heard.Asked.Matched ? "Levels are matched; unmatched, B is" : "True levels: B is")} {Math.Abs(Heard.LouderDb):0.0} dB "
        ) + (Heard.LouderDb >= 0 ? "louder than A by its circuit alone." : "softer than A by its circuit alone.");
}
