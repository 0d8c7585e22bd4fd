using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Cylinders;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Planning;

/// <summary>How one of the cylinders on hand stands while a plan is made. Immutable.</summary>
public sealed class CylinderStanding
{
    /// <summary>A cylinder with less room than this, kg, is not worth a change-over.</summary>
    private const double LeastRoom = 0.05;

    private readonly double _scaleError;

    internal CylinderStanding(RecoveryCylinder cylinder, FillLimit limit, IEnumerable<Finding> fitness, double scaleError)
    {
        _scaleError = scaleError;
        Cylinder = cylinder;
        Limit = limit;
        Findings = [.. fitness, .. limit.Findings];
        MayBeFilled = Findings.All(finding => finding.Severity != Severity.Stop);
    }

    private CylinderStanding(CylinderStanding other, CylinderState state, double received, double leftAt)
    {
        _scaleError = other._scaleError;
        Cylinder = other.Cylinder;
        Limit = other.Limit;
        Findings = other.Findings;
        MayBeFilled = other.MayBeFilled;
        State = state;
        Kilograms = received;
        LeftAt = leftAt;
    }

    /// <summary>The cylinder, with its content before the job.</summary>
    public RecoveryCylinder Cylinder { get; }

    /// <summary>How full it may be, and why.</summary>
    public FillLimit Limit { get; }

    /// <summary>Its state; null until it is connected.</summary>
    public CylinderState? State { get; }

    /// <summary>What was delivered to it; below zero where it gave vapor for a push that brought less back.</summary>
    public Mass Received => new(Kilograms, MassUnit.Kilogram);

    /// <summary>What may still be delivered to it.</summary>
    public Mass Room => new(System.Math.Max(0, Limit.MaximumFill.Kilograms - Cylinder.Content.Kilograms - Kilograms), MassUnit.Kilogram);

    /// <summary>Whether nothing forbids to fill it: marks, requalification, content, the pressure of the refrigerant at the place.</summary>
    public bool MayBeFilled { get; }

    /// <summary>Whether it may be filled and has room worth a change-over.</summary>
    public bool IsUsable => MayBeFilled && Room.Kilograms + _scaleError > LeastRoom;

    /// <summary>What speaks against it: by the filling rules, and by the job.</summary>
    internal IReadOnlyList<Finding> Findings { get; }

    /// <summary>kg, booked from transfers.</summary>
    internal double Kilograms { get; }

    /// <summary>When it was last disconnected or seen, s since the start of the job.</summary>
    internal double LeftAt { get; }

    internal CylinderStanding With(CylinderState state, double received, double at) => new(this, state, received, at);

    /// <summary>Label and room, and whether it may be filled.</summary>
    public override string ToString() => $"{Cylinder.Label}: room for {Require.Text(Room.Kilograms)} kg{(MayBeFilled ? string.Empty : ", must not be filled")}";
}
