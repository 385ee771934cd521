using BenchmarkDotNet.Attributes;
using Coilwright.Papers.Labels;

namespace Coilwright.Benchmarks;

/// <summary>200 labels, each with Code 128 and QR, as one PDF, against the same labels as 200 PDFs of one in the same run.</summary>
[SimpleJob(launchCount: 1, warmupCount: 4, iterationCount: 12)]
public class LabelBenchmarks
{
    private readonly PieceLabel[] _labels =
    [
        .. Enumerable
            .Range(1, 200)
            .Select(number => FormattableString.Invariant($"HB-{number:000}"))
            .Select(code => new PieceLabel(code, code, ["Harbour bridge", "main"])),
    ];

    [Benchmark(Baseline = true)]
    public int OneByOne() => _labels.Sum(label => LabelPdf.Render([label]).Length);

    [Benchmark]
    public int AllInOne() => LabelPdf.Render(_labels).Length;
}
