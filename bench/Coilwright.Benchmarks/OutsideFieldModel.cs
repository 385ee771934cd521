using System.Diagnostics;
using System.Globalization;

namespace Coilwright.Benchmarks;

/// <summary>Our finite-element model of six rods (tests/Outside/fields), meshed by gmsh and solved by getdp; both from Debian.</summary>
internal sealed class OutsideFieldModel : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("field-").FullName;

    private OutsideFieldModel() { }

    /// <summary>True when both programs are found on the path.</summary>
    public static bool IsInstalled { get; } = OnPath("gmsh") && OnPath("getdp");

    /// <summary>Makes the mesh that make-field-results makes.</summary>
    public static OutsideFieldModel Mesh()
    {
        OutsideFieldModel model = new();
        string source = Path.Combine(Repository.Root(), "tests", "Outside", "fields");
        foreach (string file in (string[])["pickup.geo", "static.pro"])
        {
            File.Copy(Path.Combine(source, file), Path.Combine(model._folder, file));
        }

        model.Run("gmsh", "-3", "pickup.geo", "-setnumber", "fine", "1.6", "-format", "msh2", "-o", "six.msh", "-v", "1");
        return model;
    }

    /// <summary>Inductance per turn squared at permeability 100, H.</summary>
    public double SolveH()
    {
        Run("getdp", "static.pro", "-msh", "six.msh", "-solve", "R", "-setnumber", "muRod", "100", "-v", "1");
        return double.Parse(
            File.ReadAllText(Path.Combine(_folder, "L.txt")).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)[^1],
            CultureInfo.InvariantCulture
        );
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private static bool OnPath(string program) =>
        (Environment.GetEnvironmentVariable("PATH") ?? "")
            .Split(Path.PathSeparator)
            .Any(folder => File.Exists(Path.Combine(folder, program)));

    private void Run(string program, params string[] arguments)
    {
        using Process process = Process.Start(
            new ProcessStartInfo(program, arguments)
            {
                WorkingDirectory = _folder,
                RedirectStandardOutput = true,
                RedirectStandardError = true,
            }
        )!;
        Task<string> error = process.StandardError.ReadToEndAsync();
        string output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        if (process.ExitCode != 0)
        {
            throw new InvalidOperationException($"{program} failed: {output}{error.GetAwaiter().GetResult()}");
        }
    }
}
