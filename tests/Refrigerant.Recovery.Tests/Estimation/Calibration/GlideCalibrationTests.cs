using System;
using System.Collections.Generic;
using System.Linq;
using System.Threading.Tasks;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Estimation.Calibration;

/// <summary>Calibration on jobs of blends with glide: what is left gets heavier, as the engine follows it, component by component.</summary>
public class GlideCalibrationTests
{
    private const double Atmosphere = 101_325;
    private const int Jobs = 30;

    /// <summary>Seeds that no figure was chosen on.</summary>
    private const int FirstSeed = 5000;

    [Theory]
    [InlineData("R-407C", CompositionMode.Tracked)]
    [InlineData("R-448A", CompositionMode.Tracked)]
    [InlineData("R-407C", CompositionMode.Fixed)]
    public void Displacement_is_within_5_percent_and_its_range_holds(string fluid, CompositionMode composition)
    {
        var off = new double[Jobs];
        var charges = new bool[Jobs];
        var holds = new bool[Jobs];
        Parallel.For(0, Jobs, i =>
        {
            var random = new Noise(FirstSeed + i);
            double charge = random.Logarithmic(2, 8);
            double displacement = random.Logarithmic(3e-4, 8e-4);
            double volume = charge / random.Uniform(250, 500);
            double resistance = random.Logarithmic(0.012, 0.04);
            RecoveryJob Job(double known, double room, double drawn) => new()
            {
                Appliance = new Appliance
                {
                    Fluid = Fluid.Get(fluid),
                    Charge = Mass.FromKilograms(known * charge),
                    InternalVolume = Volume.FromCubicMeters(room * volume),
                    Temperature = Temperature.FromDegreesCelsius(20),
                    HeatResistance = ThermalResistance.FromSquareMeterKelvinsPerWatt(resistance),
                },
                Machine = RecoveryMachine.FromDisplacement(VolumeFlow.FromCubicMetersPerSecond(drawn * displacement)),
                Hoses = new HoseSet { VaporSide = [new Hose { Length = Length.FromMeters(1.5), InnerDiameter = Length.FromMillimeters(8) }] },
                Cylinders = [RecoveryCylinder.FromTestPressure(Pressure.FromBars(48), Mass.FromKilograms(40), Mass.FromKilograms(15)) with { Content = Mass.FromKilograms(2) }],
            };
            RecoveryJob told = Job(random.Uniform(0.88, 1.12), random.Uniform(0.7, 1.3), random.Uniform(0.88, 1.12));
            JobCalibration fit = JobCalibration.Fit(told, Log(Job(1, 1, 1), composition, random));
            off[i] = Math.Abs((fit.Displacement.Best.CubicMetersPerSecond / displacement) - 1);
            holds[i] = fit.Displacement.Low.CubicMetersPerSecond <= displacement && displacement <= fit.Displacement.High.CubicMetersPerSecond;
            charges[i] = fit.Appliances[0].Charge.Low.Kilograms <= charge && charge <= fit.Appliances[0].Charge.High.Kilograms;
        });
        Array.Sort(off);
        Assert.InRange(off[Jobs / 2], 0, 0.05);
        Assert.InRange(holds.Count(each => each), 0.8 * Jobs, Jobs);
        Assert.InRange(charges.Count(each => each), 0.8 * Jobs, Jobs);
    }

    /// <summary>A reading every other second, two rests of a minute, two minutes after the level; a gauge of 2 kPa to either side, a scale that shows 5 g.</summary>
    private static JobLog Log(RecoveryJob job, CompositionMode composition, Noise random)
    {
        RecoverySimulation plant = RecoverySimulation.Start(new SimulationSetup
        {
            Appliance = job.Appliance,
            Machine = job.Machine,
            Hoses = job.Hoses,
            Cylinder = job.Cylinders[0],
            Composition = composition,
        });
        double level = RecoveryMonitor.Start(job).Level.Pascals;
        double bias = random.Uniform(-2000, 2000);
        var readings = new List<JobReading>();
        int after = 0;
        for (int t = 0; after < 120 && t < 7200; t++)
        {
            bool rests = t is (> 120 and <= 180) or (> 330 and <= 390) || after > 0;
            if (t % 2 == 0)
            {
                readings.Add(new JobReading
                {
                    Time = Duration.FromSeconds(t),
                    SuctionGaugePressure = Pressure.FromPascals((rests ? plant.AppliancePressure : plant.SuctionPressure) - Atmosphere + bias + random.Uniform(-300, 300)),
                    GrossWeight = Mass.FromKilograms(0.005 * Math.Round((15 + plant.CylinderMass) / 0.005)),
                    MachineRunning = !rests,
                });
            }

            plant.Step(1, new SimulationInputs { MachineRunning = !rests });
            after += after > 0 || plant.AppliancePressure < level ? 1 : 0;
        }

        return JobLog.FromReadings(readings);
    }
}
