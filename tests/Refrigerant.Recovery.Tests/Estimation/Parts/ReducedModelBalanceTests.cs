using System;
using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Fluids;
using Xunit;
using static Refrigerant.Recovery.Tests.Estimation.Parts.ReducedParts;

namespace Refrigerant.Recovery.Tests.Estimation.Parts;

/// <summary>The balances of the reduced model by the property model and by its equations as they stand, integrated with steps so small that they do not count.</summary>
public class ReducedModelBalanceTests
{
    private static readonly PropertyModel Engine = Fluid.Get("R-134a").Model;
    private static readonly SaturationTable Table = new(Engine);
    private static readonly ReducedModel Model = new(Table);

    /// <summary>Without heat from outside, what leaves takes its enthalpy h″ along: U of refrigerant and metal falls by ∫h″·dm.</summary>
    [Theory]
    [InlineData(1.0)]
    [InlineData(0.5)]
    public void Energy_is_conserved_while_vapor_is_drawn_off(double wetExponent)
    {
        ReducedParameters parameters = Typical() with { OuterConductance = 0, WetExponent = wetExponent };
        ReducedState state = At(295);
        double before = Energy(6, 295) + (parameters.MetalCapacity * 295);
        double taken = 0;
        for (int i = 0; i < 200; i++)
        {
            ReducedState last = state;
            Model.Advance(ref state, in parameters, new ReducedInputs(295, true), 1, 0.25);
            taken += (state.Delivered - last.Delivered) * Engine.SaturationAtTemperature(0.5 * (last.Temperature + state.Temperature)).Dew.Enthalpy;
        }

        double after = Energy(6 - state.Delivered, state.Temperature) + (parameters.MetalCapacity * state.MetalTemperature);
        Assert.InRange(state.Delivered, 0.8, 4);

        // Next to the heat of evaporation of what has left, 200 kJ a kilogram; the table's straight lines leave some parts in a thousand.
        Assert.Equal(before - after, taken, 5e-3 * 2e5 * state.Delivered);
    }

    /// <summary>Metal and refrigerant in one lump, warmed from outside at rest: the sum of their energies grows by K·∫(T_air − T)·dt.</summary>
    [Fact]
    public void At_rest_what_comes_in_is_what_both_gain()
    {
        ReducedParameters parameters = Typical() with { OuterConductance = 80 };
        ReducedState state = At(270);
        double before = Energy(6, 270) + (parameters.MetalCapacity * 270);
        double heat = 0;
        for (int i = 0; i < 600; i++)
        {
            double metal = state.MetalTemperature;
            Model.Advance(ref state, in parameters, new ReducedInputs(300, false), 1, 1);
            heat += 80 * (300 - state.MetalTemperature);
            Assert.InRange(state.MetalTemperature, metal, 300);
        }

        double after = Energy(6, state.Temperature) + (parameters.MetalCapacity * state.MetalTemperature);
        Assert.Equal(heat, after - before, 5e-3 * heat);
        Assert.Equal(0, state.Delivered);
    }

    /// <summary>
    /// dT_w, dT_m, dT, dm and what oil gives off by the equations of the remarks, with Euler's steps of 5 ms: what is left of a difference is the first order of both.
    /// </summary>
    [Theory]
    [InlineData(6, "FromDensity", 0.4, 0, 290)]
    [InlineData(6, "LiquidPresent", 1, 0.5, 262)]
    [InlineData(2, "FromDensity", 0.7, 0.8, 280)]
    [InlineData(0.3, "VaporOnly", 0.7, 0.2, 275)]
    [InlineData(0.3, "FromDensity", 1, 0.3, 288)]
    public void It_follows_its_equations(double charge, string phase, double exponent, double dissolved, double metal)
    {
        ReducedParameters parameters = Typical() with
        {
            Charge = charge + dissolved,
            OuterConductance = 60,
            WetShare = 0.3,
            WetExponent = exponent,
            FullLevel = 0.8,
            Mixing = 1 / 60.0,
            DryFactor = 6,
            OilCapacity = 0.05,
            OilBend = 0.7,
            OilTime = 80,
        };
        var start = new ReducedState { Temperature = 285, MetalTemperature = metal, WetTemperature = 0.5 * (metal + 285), Dissolved = dissolved };
        var inputs = new ReducedInputs(300, true, Enum.Parse<AssumedPhase>(phase)) { Passing = 1e-4 };
        ReducedState fine = start;
        for (int i = 0; i < 4000; i++)
        {
            Euler(ref fine, in parameters, in inputs, 0.005);
        }

        ReducedState state = start;
        Model.Advance(ref state, in parameters, in inputs, 20, 0.05);
        ReducedState second = start;
        for (int i = 0; i < 40; i++)
        {
            Model.AdvanceSecondOrder(ref second, in parameters, in inputs, 0.5);
        }

        foreach (ReducedState each in new[] { state, second })
        {
            Assert.Equal(fine.Delivered, each.Delivered, 1e-3 * fine.Delivered);
            Assert.Equal(fine.Temperature - 285, each.Temperature - 285, 0.01 + (2e-3 * Math.Abs(fine.Temperature - 285)));
            Assert.Equal(fine.MetalTemperature - metal, each.MetalTemperature - metal, 2e-3 + (5e-3 * Math.Abs(fine.MetalTemperature - metal)));
            Assert.Equal(fine.WetTemperature - start.WetTemperature, each.WetTemperature - start.WetTemperature, 5e-3 + (5e-3 * Math.Abs(fine.WetTemperature - start.WetTemperature)));
            Assert.Equal(dissolved - fine.Dissolved, dissolved - each.Dissolved, 5e-4 + (3e-3 * (dissolved - fine.Dissolved)));
        }
    }

    /// <summary>Half the step, half the error; of the extrapolated step a quarter.</summary>
    [Fact]
    public void One_step_is_of_first_order_and_the_extrapolated_one_of_second()
    {
        // Between two nodes of the table, so that its corners do not count.
        ReducedParameters parameters = Typical() with
        {
            Displacement = 2e-4,
            OuterConductance = 0,
            MetalCapacity = 4e5,
            InnerConductance = 1000,
            OilCapacity = 0.05,
            OilTime = 60,
            WetShare = 0.3,
            Mixing = 0.01,
            DryFactor = 5,
        };
        ReducedState exact = Run(parameters, 0.0125, true);
        double first = Run(parameters, 1, false).Temperature - exact.Temperature;
        double half = Run(parameters, 0.5, false).Temperature - exact.Temperature;
        Assert.InRange(first / half, 1.8, 2.2);
        Func<ReducedState, double>[] each = [s => s.Temperature, s => s.MetalTemperature, s => s.WetTemperature, s => s.Dissolved, s => s.Delivered];
        Assert.All(each, of => Assert.InRange((of(Run(parameters, 2, true)) - of(exact)) / (of(Run(parameters, 1, true)) - of(exact)), 3.2, 5));
    }

    [Fact]
    public void A_number_of_steps_fits_the_duration()
    {
        ReducedParameters parameters = Typical();
        ReducedState once = At(295);
        ReducedState thrice = At(295);
        Model.Advance(ref once, in parameters, new ReducedInputs(295, true), 7.5, 2.5);
        for (int i = 0; i < 3; i++)
        {
            Model.Advance(ref thrice, in parameters, new ReducedInputs(295, true), 2.5, 100);
        }

        Assert.Equal(thrice, once);
        Model.Advance(ref once, in parameters, new ReducedInputs(295, true), 2.6, 2.5);
        Model.Advance(ref thrice, in parameters, new ReducedInputs(295, true), 1.3, 2.5);
        Model.Advance(ref thrice, in parameters, new ReducedInputs(295, true), 1.3, 2.5);
        Assert.Equal(thrice.Temperature, once.Temperature, 1e-12);
        Assert.Equal(thrice.Delivered, once.Delivered, 1e-12);
    }

    /// <summary>However long a step, it takes at most half of what is there, changes the temperature by 20 K at most, and stays within the table.</summary>
    [Fact]
    public void No_step_takes_more_than_half()
    {
        ReducedParameters parameters = Typical() with { Charge = 0.8, OuterConductance = 0, InnerConductance = 1e-9 };
        ReducedState state = At(295);
        Model.Advance(ref state, in parameters, new ReducedInputs(295, true), 1000, 1000);
        Assert.Equal(0.4, state.Delivered, 1e-9);
        Assert.Equal(275, state.Temperature, 1e-9);
        for (int i = 0; i < 50; i++)
        {
            Model.Advance(ref state, in parameters, new ReducedInputs(295, true), 1000, 1000);
        }

        Assert.True(state.Delivered < 0.8);
        Assert.InRange(state.Temperature, Table.Lowest, 275);
        state = At(340);
        parameters = Typical() with { OuterConductance = 1e6, InnerConductance = 1e6 };
        Model.Advance(ref state, in parameters, new ReducedInputs(800, false), 1000, 10);
        Assert.Equal(Table.Highest, state.Temperature);
        Assert.Equal(Table.Highest, state.MetalTemperature);
        Assert.Equal(Table.Highest, state.WetTemperature);
    }

    private static ReducedState Run(ReducedParameters parameters, double step, bool isSecond)
    {
        ReducedState state = At(295.8) with { Dissolved = 0.6 };
        int steps = (int)Math.Round(20 / step);
        var inputs = new ReducedInputs(295, true);
        for (int i = 0; i < steps; i++)
        {
            if (isSecond)
            {
                Model.AdvanceSecondOrder(ref state, in parameters, in inputs, step);
            }
            else
            {
                Model.Advance(ref state, in parameters, in inputs, step, step);
            }
        }

        return state;
    }

    /// <summary>Internal energy of a mass in 18 L by the property model, J.</summary>
    private static double Energy(double mass, double kelvins) => mass * Engine.VesselAtTemperature(kelvins, mass / 0.018).Bulk.InternalEnergy;

    private static void Euler(ref ReducedState state, in ReducedParameters p, in ReducedInputs inputs, double h)
    {
        Model.Evaluate(in state, in p, in inputs, out ReducedOutput now);
        Table.At(state.Temperature, out SaturationValues at);
        double mixing = p.Mixing * p.MetalCapacity;
        double f = 0;
        double capacity = now.Mass * at.GasHeatCapacity;
        double latent = now.Pressure * p.Volume / now.Mass;
        if (!now.IsDry)
        {
            double level = Math.Min(1, (now.LiquidMass + (10 * now.Flow)) * at.LiquidVolume / (0.8 * p.Volume));
            f = p.WetShare + ((1 - p.WetShare) * Math.Pow(level, p.WetExponent));
            capacity = (now.LiquidMass * at.LiquidHeatCapacity) + ((now.Mass - now.LiquidMass) * at.VaporHeatCapacity);
            latent = at.VaporTakes;
        }

        // T_m is the mean of the wetted part and of the dry rest.
        double dryPart = f < 1 ? (state.MetalTemperature - (f * state.WetTemperature)) / (1 - f) : 0;
        double k = p.InnerConductance;
        double heat = (f * k * (state.WetTemperature - state.Temperature)) + (f < 1 ? (1 - f) * k / p.DryFactor * (dryPart - state.Temperature) : 0);
        double oil = 0.5 * (state.MetalTemperature + inputs.AirTemperature);
        double s = Math.Min(0.9, now.Pressure / Table.DewPressure(oil));
        double held = p.OilCapacity * (1 + (p.OilBend * (s - 0.5))) * s / (1 - s);
        double given = Math.Max(0, state.Dissolved - held) / p.OilTime;
        double flow = now.Flow + inputs.Passing;
        ReducedState next = state;
        next.WetTemperature += h / p.MetalCapacity * ((p.OuterConductance * (inputs.AirTemperature - state.WetTemperature)) - (k * (state.WetTemperature - state.Temperature)) + (mixing * (state.MetalTemperature - state.WetTemperature)));
        next.MetalTemperature += h / p.MetalCapacity * ((p.OuterConductance * (inputs.AirTemperature - state.MetalTemperature)) - heat);
        next.Temperature += h / capacity * (heat - ((flow - given) * latent));
        next.Delivered += h * flow;
        next.Dissolved -= h * given;
        state = next;
    }
}
