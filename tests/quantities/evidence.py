"""What each group of calculations is held against: published numbers, and computations done another way.

A `Held` names the test that holds it and, where an outside library does the other computation, which. Numbers
with their sources stand in `published.py`; where none is published for a group, `no_source` says so.
"""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Held:
    """Calculators (none for an engine) computed another way: how, by which library, in which test."""

    calculators: tuple[str, ...] = ()
    against: str
    library: str = ""
    test: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Group:
    """One group of calculations; `tables` are tests that hold further published values."""

    name: str
    held: tuple[Held, ...]
    published: tuple[str, ...] = ()
    tables: tuple[str, ...] = ()
    no_source: str = ""


def held(test: str, against: str, *calculators: str, library: str = "") -> Held:
    return Held(calculators=calculators, against=against, library=library, test=test)


GROUPS = (
    Group(
        name="openings: set-back, packers, architraves, ways out",
        published=("opening_shape",),
        held=(
            held("quantities.test_architraves:test_the_pieces_fill_the_ring_exactly",
                 "union of the pieces as polygons", "architrave_set", library="shapely"),
            held("quantities.test_out_of_square:test_short_and_long_points_are_where_parallel_lines_meet",
                 "lines laid out by coordinates", "opening_shape", "mitred_set", library="shapely"),
            held("quantities.test_packers:test_a_fit_agrees_with_the_section_drawn",
                 "section drawn as boxes", "packer_fit", library="shapely"),
            held("quantities.test_packers:test_head_over_legs_fills_the_ring_round_the_opening",
                 "union of the strips", "packer_set", library="shapely"),
            held("quantities.test_packers:test_each_reading_keeps_what_is_left_and_on_which_side",
                 "mean and remainders reckoned by hand", "even_packer"),
            held("quantities.test_ways:test_each_way_leaves_what_the_section_shows",
                 "each way's section reckoned by hand", "ways_out", "surroundings", "packed_way",
                 "rebated_way", "extended_way", "reset_way", "eased_way"),
            held("quantities.test_ways:test_where_the_legs_have_stations_the_skirting_is_held_against_the_feet",
                 "architrave less skirting at each foot", "skirting_meets"),
        ),
    ),
    Group(
        name="schedule of openings",
        no_source="no source: a schedule repeats the calculators for each opening and adds up",
        held=(
            held("quantities.test_a_long_survey:test_totals_are_those_of_the_rows_by_hand",
                 "rows added up with plain numbers"),
            held("quantities.test_a_long_survey:test_the_order_of_rows_changes_no_batch",
                 "the rows shuffled"),
        ),
    ),
    Group(
        name="cutting plans",
        tables=("cutting.test_solving:test_the_paper_rolls_of_the_textbooks_take_seventy_three",
                "cutting.test_solving:test_published_instances_reach_their_published_optimum"),
        held=(
            held("cutting.test_solving:test_no_plan_at_all_is_cheaper", "every plan there is, few pieces"),
            held("cutting.test_solving:test_bars_that_were_cut_up_whole_are_put_together_again",
                 "optima known by construction"),
            held("cutting.test_solving:test_the_whole_number_model_finds_no_fewer_bars",
                 "an assignment model solved by HiGHS", library="highspy"),
            held("cutting.test_plans:test_no_cut_touches_the_neighbouring_piece",
                 "pieces on their bars as polygons", library="shapely"),
            held("cutting.test_plans:test_stock_is_pieces_saw_trim_and_offcut_to_the_last_half_millimetre",
                 "every bar added up"),
        ),
    ),
    Group(
        name="skirting",
        published=("room",),
        held=(
            held("quantities.test_room_skirting:test_a_measured_room_has_the_area_of_its_polygon_and_closes",
                 "area of the polygon", "room", library="shapely"),
            held("quantities.test_room_skirting:test_faces_of_the_skirting_add_up_to_the_inset_polygon",
                 "perimeter of the inset polygon", "skirting_run", library="shapely"),
            held("quantities.test_room_skirting:test_one_heading_is_as_far_from_the_sight_line_as_any",
                 "every place for a heading"),
        ),
    ),
    Group(
        name="wood floor",
        no_source="no source: makers publish limits, not layouts; the wood's movement is held under moisture",
        held=(
            held("quantities.test_floors:test_rows_cut_to_the_room_cover_it_once",
                 "room eroded by the gap, rows cut to it", "floor_layout", library="shapely"),
            held("drawings.test_rooms:test_floor_boards_fill_the_room_less_its_gap_without_a_hole_or_an_overlap",
                 "union of the boards drawn", library="shapely"),
            held("quantities.test_rectilinear:test_the_pieces_of_a_strip_are_those_of_the_polygon",
                 "strips of any room", library="shapely"),
            held("quantities.test_floors:test_a_layout_can_be_laid_with_the_boards_it_counts",
                 "the floor laid again out of two heaps of offcuts"),
            held("quantities.test_floors:test_no_other_width_of_row_1_leaves_wider_strips",
                 "every width of row 1 to the millimetre"),
            held("quantities.test_floors:test_a_room_reaches_as_far_as_its_polygon", "bounds of the polygon",
                 "room_reach", library="shapely"),
        ),
    ),
    Group(
        name="doors",
        no_source="common practice, no source: hinge places; gaps of fire doors are their certificate's",
        held=(
            held("quantities.test_doors:test_a_square_edge_needs_what_turning_the_leaf_shows",
                 "the leaf turned on its pin", "leading_edge", library="shapely"),
            held("quantities.test_doors:test_the_radius_is_the_furthest_corner",
                 "corners of the leaf turned", "leaf_sweep"),
            held("quantities.test_doors:test_leaf_gaps_and_trim_make_up_the_opening_and_the_blank",
                 "leaf, gaps and trim added up", "leaf_size"),
            held("quantities.test_doors:test_hinge_places_of_the_worked_leaf", "places by hand",
                 "hinge_set_out", "latch_set_out"),
            held("quantities.test_doors:test_a_heavy_leaf_is_for_two_and_for_hinges_that_bear_it",
                 "mass by hand", "leaf_mass"),
            held("quantities.test_doors:test_a_pair_of_leaves_with_its_gaps_and_its_lap_fills_the_opening",
                 "two leaves, three gaps and the lap", "pair_of_leaves"),
            held("quantities.test_leaf_swing:test_the_angle_is_the_one_found_by_turning_the_leaf",
                 "the leaf turned until it touches", "door_swing", library="shapely"),
        ),
    ),
    Group(
        name="partitions, window board, balusters, straight stair",
        published=("straight_stair", "guarding", "ladder_set_up"),
        held=(
            held("quantities.test_partitions:test_no_member_stands_in_another_and_the_opening_is_clear",
                 "members as boxes", "partition_frame", library="shapely"),
            held("quantities.test_partitions:test_sheets_cover_both_faces_and_joints_never_share_a_stud",
                 "sheets as boxes", "sheet_layout"),
            held("quantities.test_partitions:test_a_board_cut_to_its_notches_fills_reveal_nosing_and_ears",
                 "the board on plan as polygons", "window_board", library="shapely"),
            held("quantities.test_stairs:test_a_sphere_meets_the_level_gap_whatever_the_pitch",
                 "a disc between leaning bars", "balusters", library="shapely"),
            held("quantities.test_stairs:test_a_baluster_on_a_rake_fills_the_space_between_two_sloping_grooves",
                 "the space as a polygon", "baluster_cut", library="shapely"),
            held("quantities.test_stairs:test_the_fewest_risers_keep_the_greatest_rise",
                 "one riser fewer", "straight_stair"),
            held("quantities.test_stairs:test_a_flight_is_read_step_by_step_and_in_one", "steps added up",
                 "flight_survey"),
            held("quantities.test_stairs:test_guarding_is_held_to_approved_document_k",
                 "heights of the document", "guarding"),
            held("quantities.test_ladders:test_a_ladder_leans_as_its_sides_say", "sides of the triangle",
                 "ladder_set_up"),
        ),
    ),
    Group(
        name="mouldings",
        published=("sprung_mitre",),
        held=(
            held("quantities.test_mouldings:test_area_and_girth_are_those_of_the_outline_drawn",
                 "outline as a polygon", "moulding_section", library="shapely"),
            held("quantities.test_mouldings:test_compound_mitre_is_the_cut_plane_seen_in_the_lying_piece",
                 "vectors of the two planes", "sprung_mitre"),
            held("quantities.test_cornices:test_the_ceiling_edge_is_the_room_set_in_by_the_projection",
                 "inset polygon", "cornice_run", library="shapely"),
            held("quantities.test_cornices:test_the_ground_fills_what_wall_ceiling_and_back_leave",
                 "the corner less the moulding", "cornice_ground", library="shapely"),
        ),
    ),
    Group(
        name="fixings, glue, filler",
        published=("joint_bead",),
        held=(
            held("quantities.test_joints:test_a_tooled_bead_is_what_a_round_tool_leaves_in_the_corner",
                 "corner less a disc", "tooled_bead", library="shapely"),
            held("quantities.test_joints:test_a_wavy_bead_is_as_long_as_the_line_that_is_laid",
                 "length of the line", "wavy_bead", library="shapely"),
            held("quantities.test_joints:test_a_joint_bead_is_twice_the_three_cornered_one",
                 "half a rectangle", "joint_bead", "fillet_bead"),
            held("quantities.test_joints:test_a_cartridge_reaches_as_far_as_its_bead_takes_of_it",
                 "the bead laid again", "bead_reach", "glue_bead"),
            held("quantities.test_joints:test_a_spread_is_an_area_times_its_film_however_it_is_written",
                 "the sum written out", "spread"),
            held("quantities.test_joints:test_a_screw_bites_stays_hidden_and_is_the_shortest_that_does",
                 "every stock length", "screw_length"),
            held("quantities.test_joints:test_screws_stand_evenly_inside_the_piece_and_no_further_apart_than_asked",
                 "places counted", "screw_rows"),
            held("quantities.test_fixings_and_beads:test_filler_agrees_with_a_fine_sum",
                 "the gap summed in fine steps", "gap_filler"),
            held("quantities.test_fixings_and_beads:test_marks_rise_keep_their_distance_and_are_counted",
                 "marks walked", "marks"),
            held("quantities.test_fixings_and_beads:test_pins_stand_evenly_and_no_further_apart_than_asked",
                 "pins walked", "pins"),
            held("quantities.test_fixings_and_beads:test_the_shortest_pin_that_holds_is_chosen",
                 "every stock length", "pin_length"),
            held("quantities.test_fixings_and_beads:test_packs_are_whole", "packs filled", "packs"),
        ),
    ),
    Group(
        name="wood and moisture",
        published=("movement", "movement_coefficient"),
        tables=("quantities.test_moisture:test_moisture_agrees_with_the_handbook_table",),
        held=(
            held("quantities.test_moisture:test_moisture_by_the_handbook_equation_in_fahrenheit",
                 "the same equation in its other units", "equilibrium_moisture"),
            held("quantities.test_moisture:test_wood_that_dries_back_has_moved_as_far_as_it_swelled",
                 "there and back", "movement", "movement_coefficient"),
            held("quantities.test_moisture:test_the_gap_of_a_solid_floor_is_the_greatest_of_three_figures",
                 "three figures by hand", "expansion_gap"),
        ),
    ),
    Group(
        name="time, and the doses of a day",
        tables=("quantities.test_programme:test_the_published_plant_takes_its_forty_four_weeks",
                "quantities.test_exposure:test_noise_agrees_with_the_published_examples",
                "quantities.test_exposure:test_vibration_agrees_with_the_published_examples",
                "quantities.test_lifting_and_dust:test_the_filter_is_the_published_one"),
        held=(
            held("quantities.test_programme:test_the_longest_path_agrees_with_networkx", "longest path",
                 library="networkx"),
            held("quantities.test_programme:test_days_and_nights_agree_with_work_done_minute_by_minute",
                 "work done minute by minute"),
        ),
    ),
    Group(
        name="uncertainty",
        tables=("quantities.test_limits:test_the_published_product_keeps_what_its_factors_share",),
        held=(
            held("quantities.test_limits:test_slopes_agree_with_the_uncertainties_library", "slopes",
                 library="uncertainties"),
            held("quantities.test_limits:test_no_outcome_lies_outside_its_range", "outcomes worked again"),
            held("quantities.test_limits_of_a_job:test_every_figure_of_a_job_worked_again_lies_within_its_range",
                 "a whole job worked again"),
        ),
    ),
)  # fmt: skip
