using System.Collections.Concurrent;
using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization;
using Coilwright.Analysis.Learning;

namespace Coilwright.Workshop.Learning;

/// <summary>A set of corrections: what was read, and what follows from it for the next coil.</summary>
/// <param name="Number">Its number in the shop, from 1.</param>
/// <param name="Resistance">Of the DC resistance at 20 °C.</param>
/// <param name="Inductance">Of the inductance.</param>
/// <param name="Lines">What it was proposed for, as it was told.</param>
public sealed record LearntSet(int Number, LearntQuantity Resistance, LearntQuantity Inductance, IReadOnlyList<LearntLine> Lines)
{
    private const int MostKept = 40;

    /// <summary>Sets that were read: a record never changes, and what follows from one takes a while.</summary>
    private static readonly ConcurrentDictionary<(Guid Record, DateTimeOffset TimeUtc), LearntSet> s_known = new();

    private static readonly JsonSerializerOptions s_json = new() { Converters = { new JsonStringEnumConverter() } };

    /// <summary>When it was accepted, or proposed while nobody has accepted it.</summary>
    [JsonIgnore]
    public DateTimeOffset TimeUtc { get; init; }

    /// <summary>Its number and day: "learnt set 2 of 2026-12-02".</summary>
    [JsonIgnore]
    public string Words => string.Create(CultureInfo.InvariantCulture, $"learnt set {Number} of {TimeUtc:yyyy-MM-dd}");

    /// <summary>As text, to be kept.</summary>
    public string Write() => JsonSerializer.Serialize(this, s_json);

    /// <summary>From what was kept.</summary>
    /// <exception cref="InvalidOperationException">It cannot be read.</exception>
    public static LearntSet Read(LearningRecord record, DateTimeOffset timeUtc)
    {
        if (s_known.TryGetValue((record.Id, timeUtc), out LearntSet? known))
        {
            return known;
        }

        try
        {
            if (s_known.Count >= MostKept)
            {
                s_known.Clear();
            }

            LearntSet read = JsonSerializer.Deserialize<LearntSet>(record.Json, s_json)!;
            return s_known[(record.Id, timeUtc)] = read with { TimeUtc = timeUtc };
        }
        catch (JsonException damaged)
        {
            throw new InvalidOperationException($"the learnt set {record.Number} cannot be read (record {record.Id})", damaged);
        }
    }
}

/// <summary>One thing that readings show: by how much forecasts of a kind of coil are off.</summary>
/// <param name="Name">Its short name: the line, by which it can be ended.</param>
/// <param name="Quantity">Quantity name of the file format.</param>
/// <param name="Bobbin">The bobbin.</param>
/// <param name="Of">Lot of the wire, or what stands in the bobbin.</param>
/// <param name="Coils">How many coils were read.</param>
/// <param name="LeftOut">How many of them count as bad.</param>
/// <param name="Correction">By what part of one forecasts are raised: 0.012 is +1.2 %.</param>
/// <param name="Half">Half-width of its 95 % interval.</param>
/// <param name="Scatter">Standard deviation of good coils about it, a part of one.</param>
/// <param name="Apart">
/// True when readings tell the bobbin and the wire apart; false when both names stand for the one number.
/// </param>
public sealed record LearntLine(
    string Name,
    string Quantity,
    string Bobbin,
    string Of,
    int Coils,
    int LeftOut,
    double Correction,
    double Half,
    double Scatter,
    bool Apart
)
{
    /// <summary>Of it the mean turn's part and its half-width, where told apart.</summary>
    public double OfBobbin { get; init; }

    /// <summary>Half-width of <see cref="OfBobbin"/>.</summary>
    public double OfBobbinHalf { get; init; }

    /// <summary>Of it the part of the ohms per metre, where told apart.</summary>
    public double OfWire { get; init; }

    /// <summary>Half-width of <see cref="OfWire"/>.</summary>
    public double OfWireHalf { get; init; }
}
