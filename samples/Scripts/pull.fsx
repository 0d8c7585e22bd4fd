// One pull with three hoses, plotted, after dotnet build -c Release src/Refrigerant.Recovery: dotnet fsi samples/Scripts/pull.fsx
// Outside this repository the first three lines are: #r "nuget: Refrigerant.Recovery"
#r "../../src/Refrigerant.Recovery/bin/Release/net8.0/Refrigerant.Recovery.dll"
#r "nuget: UnitsNet, 5.75.1"
#r "nuget: MathNet.Numerics, 5.0.0"
#r "nuget: ScottPlot, 5.1.59"

open Refrigerant.Recovery.Equipment
open Refrigerant.Recovery.Fluids
open Refrigerant.Recovery.Processes
open UnitsNet

// An invented cold-drink cabinet; the cylinder is large enough for all of it.
let cabinet =
    Appliance(
        Fluid = Fluid.Get "R-134a",
        Charge = Mass.FromKilograms 4.0,
        InternalVolume = Volume.FromLiters 12.0,
        Temperature = Temperature.FromDegreesCelsius 25.0)

let machine = RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond 0.6)
let cylinder = RecoveryCylinder.FromMark("4BA400", Mass.FromPounds 47.6, Mass.FromPounds 27.5)
let options = VaporRecoveryOptions(TargetPressure = Pressure.FromKilopascals 50.0)

let hose bore fittings =
    Hose(Length = Length.FromMeters 1.8, InnerDiameter = bore, Fittings = fittings)

let thin, wide = Length.FromMillimeters 5.0, Length.FromMillimeters 8.0

let plot = new ScottPlot.Plot()

for name, hose in
    [ "5 mm, valve core in", hose thin [| Fitting.CoreDepressor() |]
      "5 mm, core out", hose thin [||]
      "8 mm, core out", hose wide [||] ] do
    let pull = VaporRecovery.Simulate(cabinet, machine, HoseSet(VaporSide = [| hose |]), cylinder, options)
    let points = Seq.toArray pull.Trajectory
    let minutes = points |> Array.map _.Time.Minutes
    let kilopascals = points |> Array.map _.AppliancePressure.Kilopascals
    plot.Add.ScatterLine(minutes, kilopascals).LegendText <- name
    printfn $"%-20s{name} %6.2f{pull.Duration.Minutes} min %7.1f{pull.RemainingMass.Grams} g left"

plot.XLabel "minutes"
plot.YLabel "kPa absolute in the appliance"
plot.ShowLegend ScottPlot.Alignment.UpperRight
plot.SaveSvg("pull.svg", 800, 500)
