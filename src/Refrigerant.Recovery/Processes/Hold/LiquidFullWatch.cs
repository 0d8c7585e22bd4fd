using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Simulation;
using Refrigerant.Recovery.Simulation.Vessels;

namespace Refrigerant.Recovery.Processes;

/// <summary>Watches, in vessels that stand shut, for liquid that fills them: from there the pressure rises by some bar with each kelvin.</summary>
internal sealed class LiquidFullWatch
{
    /// <summary>Share of the volume from which a vessel counts as nearly full: some 15 K before it is full (our choice).</summary>
    private const double NearlyFull = 0.95;

    /// <summary>Above the critical temperature a vessel counts as full from this many times the critical density: its pressure rises as steeply (our choice).</summary>
    private const double DenseGas = 1.5;

    private readonly List<(string Name, EquilibriumVessel Vessel, Watch Watch)> _watched = [];
    private readonly Stage _stage;

    /// <param name="stage">The stage, connected.</param>
    /// <param name="appliance">Vessels of the appliance.</param>
    /// <param name="cylinder">The cylinder; null where none is there.</param>
    public LiquidFullWatch(Stage stage, IReadOnlyList<EquilibriumVessel> appliance, EquilibriumVessel? cylinder)
    {
        _stage = stage;
        foreach (EquilibriumVessel vessel in appliance)
        {
            Watch(appliance.Count > 1 ? $"section \"{vessel.Name}\"" : "appliance", vessel);
        }

        if (cylinder is not null)
        {
            Watch("cylinder", cylinder);
        }
    }

    /// <summary>Adds what is to be said of each, as the vessels stand at the end. True where one was full.</summary>
    public bool Add(List<Finding> findings)
    {
        double[] atEnd = [.. _watched.Select(item => item.Vessel.Pressure)];
        double[] shares = [.. _watched.Select(item => item.Vessel.Content.LiquidVolumeFraction)];
        bool[] atStart = AtStart();
        bool any = false;
        for (int i = 0; i < _watched.Count; i++)
        {
            FindingValue name = FindingValue.Text("vessel", _watched[i].Name);
            FindingValue pressure = FindingValue.Pascals("pressure", atEnd[i]);
            double at = atStart[i] ? 0 : _watched[i].Watch.FiredAt;
            if (!double.IsNaN(at))
            {
                any = true;
                findings.Add(new Finding(
                    StageCodes.HoldLiquidFull,
                    Severity.Stop,
                    "equilibrium in a rigid closed vessel",
                    $"The {name} is full of liquid, or of gas as dense, after {FindingValue.Seconds("after", at)}: from there on its pressure rises steeply with each kelvin, to {pressure} at the end, and it can burst. Stop the heat, keep away, and never shut it off as full as this."));
            }
            else if (shares[i] >= NearlyFull)
            {
                findings.Add(new Finding(
                    StageCodes.HoldLiquidFull,
                    Severity.Warning,
                    "equilibrium in a rigid closed vessel",
                    $"Liquid fills {FindingValue.Fraction("share", shares[i])} of the {name} at the end, at {pressure}: a little warmer it is full of liquid, and its pressure then rises steeply with each kelvin until it can burst. Do not leave it shut; take liquid out."));
            }
        }

        return any;
    }

    private void Watch(string name, EquilibriumVessel vessel) =>
        _watched.Add((name, vessel, _stage.Watch(StageEnd.DesignPressure, () => 1 - vessel.Content.LiquidVolumeFraction, stops: false)));

    private bool IsFull(EquilibriumVessel vessel) => vessel.Content.LiquidVolumeFraction >= 1
        || (vessel.Temperature > _stage.Model.CriticalTemperature && vessel.Mass >= DenseGas * _stage.Model.CriticalDensity * vessel.Volume);

    /// <summary>What stands full from the start does not become so.</summary>
    private bool[] AtStart()
    {
        bool stands = _stage.Network.Evaluate(_stage.Initial);
        bool[] full = [.. _watched.Select(item => stands && IsFull(item.Vessel))];
        _stage.Network.Evaluate(_stage.State);
        return full;
    }
}
