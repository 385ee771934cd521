using System.ComponentModel;
using System.Diagnostics;
using System.Globalization;
using System.Text;
using Coilwright.Physics.Circuit;

namespace Coilwright.Outside.Tests.Circuit;

/// <summary>What ngspice says of one network.</summary>
/// <param name="Gain">Rows of frequency, gain in dB and phase in degrees.</param>
/// <param name="Impedance">Rows of frequency and magnitude in Ω between the output's wires.</param>
internal sealed record SpiceAnswer(double[][] Gain, double[][] Impedance);

/// <summary>Runs Debian's ngspice. A machine without it fails the test; nothing is skipped.</summary>
internal static class Ngspice
{
    /// <summary>Solves many networks in one process.</summary>
    public static async Task<IReadOnlyList<SpiceAnswer>> Solve(
        IReadOnlyList<(LumpedPickup Pickup, LoadCircuit Load)> networks,
        CancellationToken cancel
    )
    {
        DirectoryInfo folder = Directory.CreateTempSubdirectory("coilwright-ngspice-");
        try
        {
            await File.WriteAllTextAsync(Path.Combine(folder.FullName, "all.sp"), Script(networks, folder.FullName), cancel);
            string said = await Run(folder.FullName, "all.sp", cancel);
            List<SpiceAnswer> answers = [];
            for (int i = 0; i < networks.Count; i++)
            {
                answers.Add(new SpiceAnswer(Rows(folder.FullName, $"gain{i}", said), Rows(folder.FullName, $"ohm{i}", said)));
            }

            return answers;
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    /// <summary>Runs one file in batch mode and returns what it printed.</summary>
    public static async Task<string> Run(string folder, string file, CancellationToken cancel)
    {
        ProcessStartInfo start = new("ngspice", ["-b", file])
        {
            WorkingDirectory = folder,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            RedirectStandardInput = true,
        };
        try
        {
            using Process process = Process.Start(start)!;
            process.StandardInput.Close();
            Task<string> errors = process.StandardError.ReadToEndAsync(cancel);
            string output = await process.StandardOutput.ReadToEndAsync(cancel);
            await process.WaitForExitAsync(cancel);
            return output + await errors;
        }
        catch (Win32Exception missing)
        {
            throw new InvalidOperationException("ngspice is not installed: this check needs it (apt-get install ngspice).", missing);
        }
    }

    /// <summary>
    /// Each network: gain from the string's voltage, then that source silenced and 1 A sent into the output, whose voltage is the
    /// impedance.
    /// </summary>
    private static string Script(IReadOnlyList<(LumpedPickup Pickup, LoadCircuit Load)> networks, string folder)
    {
        StringBuilder script = new("* many networks\n.control\nset numdgt=14\nset wr_singlescale\n");
        for (int i = 0; i < networks.Count; i++)
        {
            string parts = SpiceNetlist.Parts(networks[i].Pickup, networks[i].Load);
            File.WriteAllText(Path.Combine(folder, $"net{i}.cir"), $"* network {i}\n{parts}Iprobe 0 out DC 0 AC 0\n.end\n");
            script.Append(CultureInfo.InvariantCulture, $"source net{i}.cir\nac dec 600 20 1e6\nwrdata gain{i}.data vdb(out) vp(out)\n");
            script.Append(
                CultureInfo.InvariantCulture,
                $"alter vstring acmag = 0\nalter iprobe acmag = 1\nac dec 30 20 20000\nwrdata ohm{i}.data vm(out)\ndestroy all\nremcirc\n"
            );
        }

        return script.Append("quit\n.endc\n.end\n").ToString();
    }

    public static double[][] Rows(string folder, string name, string said)
    {
        string path = Path.Combine(folder, name + ".data");
        Assert.True(File.Exists(path), $"ngspice wrote no {name}.data; it said: {said}");
        return
        [
            .. File.ReadLines(path)
                .Select(line =>
                    (double[])
                        [
                            .. line.Split(' ', StringSplitOptions.RemoveEmptyEntries)
                                .Select(cell => double.Parse(cell, CultureInfo.InvariantCulture)),
                        ]
                ),
        ];
    }
}
