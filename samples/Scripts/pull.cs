// One pull with three hoses, plotted: dotnet run samples/Scripts/pull.cs
// Outside this repository the first line is: #:package Refrigerant.Recovery@0.1.0
#:project ../../src/Refrigerant.Recovery/Refrigerant.Recovery.csproj
#:package ScottPlot@5.1.59
#:property PublishAot=false
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Processes;
using UnitsNet;

// An invented cold-drink cabinet; the cylinder is large enough for all of it.
var cabinet = new Appliance
{
    Fluid = Fluid.Get("R-134a"),
    Charge = Mass.FromKilograms(4),
    InternalVolume = Volume.FromLiters(12),
    Temperature = Temperature.FromDegreesCelsius(25),
};
var machine = RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(0.6));
var cylinder = RecoveryCylinder.FromMark("4BA400", Mass.FromPounds(47.6), Mass.FromPounds(27.5));
var options = new VaporRecoveryOptions { TargetPressure = Pressure.FromKilopascals(50) };

Hose OfBore(double millimeters) => new() { Length = Length.FromMeters(1.8), InnerDiameter = Length.FromMillimeters(millimeters) };
(string Name, Hose Hose)[] hoses =
[
    ("5 mm, valve core in", OfBore(5) with { Fittings = [Fitting.CoreDepressor()] }),
    ("5 mm, core out", OfBore(5)),
    ("8 mm, core out", OfBore(8)),
];

var plot = new ScottPlot.Plot();
foreach ((string name, Hose hose) in hoses)
{
    StageResult pull = VaporRecovery.Simulate(cabinet, machine, new HoseSet { VaporSide = [hose] }, cylinder, options);
    plot.Add.ScatterLine(
        pull.Trajectory.Select(point => point.Time.Minutes).ToArray(),
        pull.Trajectory.Select(point => point.AppliancePressure.Kilopascals).ToArray()).LegendText = name;
    Console.WriteLine(FormattableString.Invariant($"{name,-20} {pull.Duration.Minutes,6:F2} min {pull.RemainingMass.Grams,7:F1} g left"));
}

plot.XLabel("minutes");
plot.YLabel("kPa absolute in the appliance");
plot.ShowLegend(ScottPlot.Alignment.UpperRight);
plot.SaveSvg("pull.svg", 800, 500);
