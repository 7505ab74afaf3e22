"""Mixed oils, pulled bolts, wet breathers: what must hold for every figure in range."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.quantities.bolt_figures import BOLT_SIZES
from inspector.quantities.breather import water_at_cooling
from inspector.quantities.fasteners import share_of_proof
from inspector.quantities.threads import first_to_give
from inspector.quantities.viscosity import blend_viscosity


@given(st.floats(5, 30), st.floats(5, 30), st.floats(0, 1), st.floats(0, 1))
def test_the_more_of_the_thinner_oil_the_thinner_the_mix(one, other, share, more):
    thin, thick = sorted((one, other))
    less, much = sorted((share, more))

    assert blend_viscosity(thick, thin, much) <= blend_viscosity(thick, thin, less) * (1 + 1e-9)
    assert blend_viscosity(one, other, share) == pytest.approx(blend_viscosity(other, one, 1 - share), rel=1e-9)


@given(st.floats(1, 100), st.floats(1, 100), st.sampled_from(["8.8", "10.9", "12.9"]))
def test_more_torque_pulls_harder_and_a_slippery_thread_harder_still(torque, other, strength):
    less, more = sorted((torque, other))
    dry, paste = (share_of_proof(less, strength, (8, 1.25), on)[0] for on in ("dry", "anti-seize or moly"))

    assert (
        share_of_proof(less, strength, (8, 1.25), "dry")[0] <= share_of_proof(more, strength, (8, 1.25), "dry")[0]
    )
    assert dry < paste
    assert (
        share_of_proof(torque, "12.9", (8, 1.25), "dry")[0] <= share_of_proof(torque, "8.8", (8, 1.25), "dry")[0]
    )


@given(
    st.floats(1, 60), st.floats(1, 60), st.sampled_from(list(BOLT_SIZES)), st.sampled_from(["8.8", "10.9", "12.9"])
)
def test_a_deeper_thread_is_never_the_first_to_give(depth, other, size, strength):
    order = ["the thread around it", "either", "the bolt"]
    shallow, deep = (
        order.index(first_to_give(one, *BOLT_SIZES[size], strength)) for one in sorted((depth, other))
    )

    assert shallow <= deep


@given(st.floats(20, 2000), st.floats(20, 2000))
def test_a_wet_breather_spoils_any_amount_of_oil_alike_and_damp_air_none(oil, other):
    wet = water_at_cooling(oil, under_water=True)

    assert wet == pytest.approx(water_at_cooling(other, under_water=True))
    assert water_at_cooling(oil, under_water=False) < 400 < wet
