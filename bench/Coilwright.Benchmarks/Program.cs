using BenchmarkDotNet.Running;

namespace Coilwright.Benchmarks;

internal static class Entry
{
    private static void Main(string[] args) => BenchmarkSwitcher.FromAssembly(typeof(Entry).Assembly).Run(args);
}
