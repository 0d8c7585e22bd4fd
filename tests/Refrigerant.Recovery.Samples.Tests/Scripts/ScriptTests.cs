using System;
using System.IO;
using System.Linq;
using System.Threading.Tasks;
using System.Xml.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Processes;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Samples.Tests.Scripts;

/// <summary>Both scripts run as a reader runs them, print the library's numbers and plot three curves.</summary>
public class ScriptTests
{
    [Fact]
    public Task TheSingleFileProgramPlotsThePull() => PlotsThePull("run", "pull.cs");

    [FSharpFact]
    public Task TheFSharpScriptPlotsThePull() => PlotsThePull("fsi", "pull.fsx");

    private static async Task PlotsThePull(string verb, string script)
    {
        DirectoryInfo folder = Directory.CreateTempSubdirectory("pull");
        try
        {
            string[] printed = await Command.Run(folder.FullName, "dotnet", verb, Repository.At("samples", "Scripts", script));
            Assert.Equal(Expected(), printed.Select(line => line.TrimEnd()));

            var picture = XDocument.Load(Path.Combine(folder.FullName, "pull.svg"));
            string[] texts = [.. picture.Descendants().Where(element => element.Name.LocalName == "text").Select(element => element.Value.Trim())];
            Assert.Superset(new[] { "5 mm, valve core in", "5 mm, core out", "8 mm, core out", "minutes" }.ToHashSet(), texts.ToHashSet());
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static string[] Expected()
    {
        var cabinet = new Appliance
        {
            Fluid = Fluid.Get("R-134a"),
            Charge = Mass.FromKilograms(4),
            InternalVolume = Volume.FromLiters(12),
            Temperature = Temperature.FromDegreesCelsius(25),
        };
        return
        [
            Line("5 mm, valve core in", 5, Fitting.CoreDepressor()),
            Line("5 mm, core out", 5),
            Line("8 mm, core out", 8),
        ];

        string Line(string name, double millimeters, params Fitting[] fittings)
        {
            Hose hose = new() { Length = Length.FromMeters(1.8), InnerDiameter = Length.FromMillimeters(millimeters), Fittings = fittings };
            StageResult pull = VaporRecovery.Simulate(
                cabinet,
                RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(0.6)),
                new HoseSet { VaporSide = [hose] },
                RecoveryCylinder.FromMark("4BA400", Mass.FromPounds(47.6), Mass.FromPounds(27.5)),
                new VaporRecoveryOptions { TargetPressure = Pressure.FromKilopascals(50) });
            return FormattableString.Invariant($"{name,-20} {pull.Duration.Minutes,6:F2} min {pull.RemainingMass.Grams,7:F1} g left");
        }
    }
}
