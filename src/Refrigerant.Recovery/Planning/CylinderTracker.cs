using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Cylinders;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Simulation;
using UnitsNet;

namespace Refrigerant.Recovery.Planning;

/// <summary>One cylinder while a plan is made: its limit, its state, what it has received.</summary>
internal sealed class CylinderTracker
{
    /// <summary>A cylinder with less room than this, kg, is not worth a change-over.</summary>
    private const double LeastRoom = 0.05;

    private readonly Fluid _fluid;
    private readonly Temperature _ambient;
    private double _startKilograms;

    public CylinderTracker(RecoveryCylinder cylinder, Fluid fluid, Temperature ambient, System.DateTime? day)
    {
        Cylinder = cylinder;
        Limit = CylinderFill.Limit(cylinder, fluid, new FillOptions { Today = day });
        _fluid = fluid;
        _ambient = ambient;
    }

    public RecoveryCylinder Cylinder { get; }

    public FillLimit Limit { get; }

    /// <summary>Its state; null until it is connected.</summary>
    public CylinderState? State { get; private set; }

    /// <summary>What was delivered to it, kg; below zero where it gave vapor for a push that brought less back.</summary>
    public double Delivered => State is null ? 0 : State.Mass.Kilograms - _startKilograms;

    /// <summary>Whether it may be filled at all and has room.</summary>
    public bool IsUsable => Limit.Findings.All(finding => finding.Severity != Severity.Stop) && Limit.Room.Kilograms > LeastRoom;

    /// <summary>The order that needs fewest change-overs: most room first.</summary>
    public static List<CylinderTracker> InOrderOfUse(RecoveryJob job, Temperature ambient) =>
        [.. job.Cylinders.Select(cylinder => new CylinderTracker(cylinder, job.Appliance.Fluid, ambient, job.Day))
            .OrderByDescending(tracker => tracker.IsUsable)
            .ThenByDescending(tracker => tracker.Limit.Room.Kilograms)];

    /// <summary>Connects it; air that the sweep left goes with it.</summary>
    public void Connect(AmountOfSubstance nonCondensables)
    {
        State = CylinderState.Initial(Cylinder, _fluid, _ambient, nonCondensables);
        _startKilograms = State.Mass.Kilograms;
    }

    public void Update(CylinderState? state) => State = state ?? State;
}
