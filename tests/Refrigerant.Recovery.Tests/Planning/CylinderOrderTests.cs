using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Cylinders;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Planning;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Planning;

/// <summary>Which cylinder is next, and which is none.</summary>
public class CylinderOrderTests
{
    /// <summary>What is known before what nobody named, then the one with most room; none that is full or must not be filled, and not the one that is connected.</summary>
    [Fact]
    public void The_next_cylinder_is_named_then_roomy()
    {
        RecoveryCylinder unnamed = Jobs.Cylinder(120, "unnamed") with { Content = Mass.FromKilograms(1) };
        RecoveryCylinder named = Jobs.Cylinder(60, "named") with { Content = Mass.FromKilograms(10), Refrigerant = "R-134a" };
        RecoveryCylinder empty = Jobs.Cylinder(50, "empty"), disposable = Jobs.Cylinder(200, "disposable") with { Specification = CylinderSpecification.FromMark("DOT 39 400") };
        RecoveryCylinder other = Jobs.Cylinder(200, "other") with { Refrigerant = "R-22" };
        RecoveryCylinder full = Jobs.Cylinder(30, "full");
        full = full with { Content = CylinderFill.Limit(full, Jobs.Chiller().Appliance.Fluid).MaximumFill, Refrigerant = "R-134a" };
        var seen = new Order();
        RecoveryPlanner.Plan(Jobs.Chiller(kilograms: 20) with { Cylinders = [unnamed, full, other, named, disposable, empty] }, seen);
        Assert.Equal(["empty", "named", "unnamed"], seen.Labels);
    }

    /// <summary>Room: limit less content and what came in; 50 g are not worth a change.</summary>
    [Fact]
    public void A_cylinder_with_less_room_than_fifty_grams_is_full()
    {
        RecoveryCylinder cylinder = Jobs.Cylinder(30, "C");
        double limit = CylinderFill.Limit(cylinder, Jobs.Chiller().Appliance.Fluid).MaximumFill.Kilograms;
        foreach ((double room, bool usable) in new[] { (0.04, false), (0.06, true), (3.0, true) })
        {
            var seen = new Order();
            RecoveryPlanner.Plan(Jobs.Chiller(kilograms: 20) with { Cylinders = [cylinder with { Content = Mass.FromKilograms(limit - room), Refrigerant = "R-134a" }] }, seen);
            Assert.Equal(usable ? ["C"] : [], seen.Labels);
            Assert.Equal(room, seen.Rooms[0], 1e-9);
        }
    }

    /// <summary>Connects each next cylinder in turn, as long as there is one that was not there before.</summary>
    private sealed class Order : IRecoveryStrategy
    {
        public List<string> Labels { get; } = [];

        public List<double> Rooms { get; } = [];

        public PlanStep? Next(PlanSituation now)
        {
            Rooms.Add(now.Cylinders[0].Room.Kilograms);
            CylinderStanding? next = now.Cylinders.Count == Labels.Count ? null : now.NextCylinder;
            if (next is null || Labels.Contains(next.Cylinder.Label))
            {
                next = Labels.Count < 3 && Labels.Count > 0 ? Third(now) : null;
            }

            if (next is null)
            {
                return null;
            }

            Labels.Add(next.Cylinder.Label);
            return new PlanStep(Labels.Count == 1 ? StageKind.SetUp : StageKind.CylinderChange) { Cylinder = next.Cylinder };
        }

        /// <summary>What is next where both that came before are out of the way.</summary>
        private CylinderStanding? Third(PlanSituation now) => now.Cylinders.FirstOrDefault(cylinder => cylinder.IsUsable && !Labels.Contains(cylinder.Cylinder.Label));
    }
}
