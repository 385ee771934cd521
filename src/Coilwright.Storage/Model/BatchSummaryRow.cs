using System.Globalization;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using Coilwright.Workshop;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Batches.Summaries;

namespace Coilwright.Storage.Model;

/// <summary>A batch's summary as the file keeps it: what is looked for in columns of its own, the whole as JSON.</summary>
internal sealed record BatchSummaryRow
{
    private static readonly JsonSerializerOptions s_options = new(JsonSerializerDefaults.Web)
    {
        Converters = { new JsonStringEnumConverter() },
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    public required Guid BatchId { get; init; }

    /// <summary>Where the batch stands; empty when it cannot be shown.</summary>
    public required string State { get; init; }

    /// <summary>Coils on hold.</summary>
    public required int Hold { get; init; }

    /// <summary>Version of the program that made it.</summary>
    public required string Program { get; init; }

    public required string Json { get; init; }

    /// <summary>The row of a summary that this program made.</summary>
    public static BatchSummaryRow Of(BatchSummary summary) =>
        new()
        {
            BatchId = summary.BatchId,
            State = WordOf(summary.State),
            Hold = summary.Hold,
            Program = ProgramVersion.Text,
            Json = JsonSerializer.Serialize(summary, s_options),
        };

    /// <summary>How a state stands in the file.</summary>
    public static string WordOf(BatchState? state) => state?.ToString() ?? "";

    /// <summary>The summary of this row.</summary>
    public BatchSummary ToSummary() => JsonSerializer.Deserialize<BatchSummary>(Json, s_options) ?? throw new JsonException("null");

    /// <summary>As <see cref="ToSummary"/>, for one who asks whether the row can be trusted.</summary>
    public KeptSummary AsKept()
    {
        string text = $"{State} {Hold.ToString(CultureInfo.InvariantCulture)} {Json}";
        try
        {
            BatchSummary summary = ToSummary();
            return summary.BatchId == BatchId && WordOf(summary.State) == State && summary.Hold == Hold
                ? new KeptSummary(summary, "", text)
                : new KeptSummary(null, "what lists look for in it is not what it says", text);
        }
        catch (Exception unreadable) when (unreadable is JsonException or NotSupportedException)
        {
            return new KeptSummary(null, "it cannot be read", text);
        }
    }
}
