using System;
using System.Runtime.InteropServices;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Records;
using Refrigerant.Recovery.Simulation;

namespace Refrigerant.Recovery.Samples.Native;

/// <summary>A simulated appliance, machine and cylinder, step by step.</summary>
internal static unsafe class SimulationExports
{
    private static readonly HandleTable<RecoverySimulation> Simulations = new("simulation");

    [UnmanagedCallersOnly(EntryPoint = "rr_simulation_start")]
    public static Status Start(byte* job, int* simulation)
    {
        try
        {
            ref int handle = ref Errors.Deref(simulation, nameof(simulation));
            RecoveryJob read = RecoveryJobJson.Read(Text.Read(job, nameof(job)));
            if (read.Cylinders.Count == 0)
            {
                throw new ArgumentException("The job has no cylinder to fill.", nameof(job));
            }

            handle = Simulations.Add(RecoverySimulation.Start(new SimulationSetup
            {
                Appliance = read.Appliance,
                Machine = read.Machine,
                Hoses = read.Hoses,
                Cylinder = read.Cylinders[0],
            }));
            return Status.Ok;
        }
        catch (Exception exception)
        {
            return Errors.Report(exception);
        }
    }

    [UnmanagedCallersOnly(EntryPoint = "rr_simulation_step")]
    public static Status Step(int simulation, double seconds, Inputs* inputs, Simulated* state)
    {
        try
        {
            ref Simulated answer = ref Errors.Deref(state, nameof(state));
            RecoverySimulation running = Simulations.Get(simulation);
            StepOutcome outcome = running.Step(seconds, Errors.Deref(inputs, nameof(inputs)).ToInputs());
            answer = new Simulated(running, outcome);
            return Status.Ok;
        }
        catch (Exception exception)
        {
            return Errors.Report(exception);
        }
    }

    [UnmanagedCallersOnly(EntryPoint = "rr_simulation_free")]
    public static Status Free(int simulation)
    {
        try
        {
            Simulations.Remove(simulation);
            return Status.Ok;
        }
        catch (Exception exception)
        {
            return Errors.Report(exception);
        }
    }

    /// <summary>The header's <c>rr_inputs</c>.</summary>
    [StructLayout(LayoutKind.Sequential)]
    internal readonly struct Inputs
    {
        private readonly double _inletOpening;
        private readonly double _heaterPower;
        private readonly double _fanFactor;
        private readonly double _cylinderFactor;
        private readonly int _machineStopped;
        private readonly int _reserved;

        public SimulationInputs ToInputs() => new()
        {
            MachineRunning = _machineStopped == 0,
            InletOpening = _inletOpening,
            HeaterPower = _heaterPower,
            FanFactor = _fanFactor,
            CylinderFactor = _cylinderFactor,
        };
    }

    /// <summary>The header's <c>rr_simulated</c>.</summary>
    [StructLayout(LayoutKind.Sequential)]
    internal readonly struct Simulated(RecoverySimulation simulation, StepOutcome outcome)
    {
        public readonly double Time = simulation.Time;
        public readonly double AppliancePressure = simulation.AppliancePressure;
        public readonly double ApplianceTemperature = simulation.ApplianceTemperature;
        public readonly double ApplianceMass = simulation.ApplianceMass;
        public readonly double LiquidMass = simulation.LiquidMass;
        public readonly double ColdestSurface = simulation.ColdestSurface;
        public readonly double SuctionPressure = simulation.SuctionPressure;
        public readonly double CylinderPressure = simulation.CylinderPressure;
        public readonly double CylinderTemperature = simulation.CylinderTemperature;
        public readonly double CylinderMass = simulation.CylinderMass;
        public readonly double DischargeTemperature = simulation.DischargeTemperature;
        public readonly double Flow = simulation.Flow;
        public readonly int Outcome = (int)outcome;
        public readonly int Reserved = 0;
    }
}
