using System;
using Refrigerant.Recovery.Fluids;

namespace Refrigerant.Recovery.Samples.Controller;

/// <summary>
/// A simulated appliance, machine and cylinder, as simple as a test of a controller allows: each vessel is at equilibrium, the compressor
/// draws vapor, the condenser follows its duty with a lag. Plain SI doubles; a step allocates nothing.
/// </summary>
internal sealed class Plant
{
    private const double Exponent = 1.15;
    private const double Efficiency = 0.65;
    private const double CondenserLag = 10;

    private readonly PropertyModel _fluid;
    private readonly Setup _setup;
    private double _seconds;
    private double _applianceMass;
    private double _applianceEnergy;
    private double _cylinderMass;
    private double _cylinderEnergy;
    private double _condensing;

    public Plant(Setup setup)
    {
        _setup = setup;
        _fluid = setup.Fluid.Model;
        _applianceMass = setup.Charge;
        _applianceEnergy = setup.Charge * _fluid.VesselAtTemperature(setup.Surroundings, setup.Charge / setup.ApplianceVolume).Bulk.InternalEnergy;
        _cylinderMass = setup.CylinderContent;
        _cylinderEnergy = _cylinderMass * _fluid.VesselAtTemperature(setup.Surroundings, _cylinderMass / setup.CylinderVolume).Bulk.InternalEnergy;
        _condensing = setup.Surroundings;
    }

    /// <summary>One step: what the sensors show at its end.</summary>
    public Readings Step(bool running, double dt)
    {
        VesselPoint appliance = _fluid.VesselAtEnergy(_applianceMass / _setup.ApplianceVolume, _applianceEnergy / _applianceMass);
        VesselPoint cylinder = _fluid.VesselAtEnergy(_cylinderMass / _setup.CylinderVolume, _cylinderEnergy / _cylinderMass);
        StatePoint vapor = appliance.Vapor.Phase == Phase.Undefined ? appliance.Bulk : appliance.Vapor;
        StatePoint liquid = _fluid.SaturationAtTemperature(_condensing).Bubble;
        double discharge = running ? Math.Max(cylinder.Bulk.Pressure, liquid.Pressure) : cylinder.Bulk.Pressure;
        double ratio = Math.Max(1, discharge / appliance.Bulk.Pressure);
        double flow = running ? _setup.Displacement * _setup.Machine.EfficiencyAt(ratio) * vapor.Density : 0;

        // Work of the compression as of an ideal gas; the condenser takes it and the heat of condensation.
        double work = Exponent / (Exponent - 1) * vapor.Pressure / vapor.Density * (Math.Pow(ratio, (Exponent - 1) / Exponent) - 1) / Efficiency;
        double duty = flow * (vapor.Enthalpy + work - liquid.Enthalpy);
        double conductance = _seconds < _setup.FanStops ? _setup.CondenserConductance : 0.05 * _setup.CondenserConductance;
        double steady = _setup.Surroundings + (Math.Max(0, duty) / conductance);
        _condensing = Math.Min(_condensing + ((steady - _condensing) * dt / CondenserLag), _fluid.CriticalTemperature - 1);

        _applianceMass -= flow * dt;
        _applianceEnergy += ((_setup.ApplianceConductance * (_setup.Surroundings - appliance.Bulk.Temperature)) - (flow * vapor.Enthalpy)) * dt;
        _cylinderMass += flow * dt;
        _cylinderEnergy += ((_setup.CylinderConductance * (_setup.Surroundings - cylinder.Bulk.Temperature)) + (flow * liquid.Enthalpy)) * dt;
        _seconds += dt;
        return new Readings(_seconds, appliance.Bulk.Pressure, discharge, _cylinderMass);
    }
}
