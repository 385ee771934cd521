using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Running;

namespace Coilwright.Benchmarks;

internal static class Entry
{
    /// <summary>The runner builds the whole program anew for itself; two cores take longer than its usual two minutes.</summary>
    private static readonly TimeSpan s_patience = TimeSpan.FromMinutes(10);

    private static void Main(string[] args)
    {
        IEnumerable<Type> types = typeof(Entry)
            .Assembly.GetTypes()
            .Where(type => type.IsPublic && type.Name.EndsWith("Benchmarks", StringComparison.Ordinal));
        if (!OutsideFieldModel.IsInstalled)
        {
            Console.WriteLine(
                "gmsh and getdp are not installed (apt-get install gmsh getdp): the field against finite elements is left out."
            );
            types = types.Where(type => type != typeof(FieldOutsideBenchmarks));
        }

        BenchmarkSwitcher.FromTypes([.. types]).Run(args, ManualConfig.Create(DefaultConfig.Instance).WithBuildTimeout(s_patience));
    }
}
